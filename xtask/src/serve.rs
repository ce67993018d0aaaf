//! `cargo xtask serve`: build, then hand the site out on this machine only.

use crate::build::{Optimise, build, dist};
use crate::site::Site;
use crate::trouble::{Outcome, Trouble};
use std::io::ErrorKind;

const PORT: u16 = 8080;

/// Builds, serves and stays until stopped.
pub fn serve(port: Option<u16>) -> Outcome {
    let port = port.unwrap_or(PORT);
    // Asked first: nobody should wait for a build to hear that the port is taken.
    drop(Site::start(&dist(), "/", port).map_err(|error| taken(port, &error))?);
    build(Optimise::IfFound)?;
    let site = Site::start(&dist(), "/", port).map_err(|error| taken(port, &error))?;
    println!(
        "Panward is at {} (Ctrl+C stops it; a browser that has seen it once goes on without it)",
        site.url()
    );
    site.wait();
    Ok(())
}

fn taken(port: u16, error: &std::io::Error) -> Trouble {
    let other = if port == u16::MAX { PORT } else { port + 1 };
    let why = match error.kind() {
        ErrorKind::AddrInUse => "is taken by another program".to_owned(),
        ErrorKind::PermissionDenied => "is reserved for root".to_owned(),
        _ => format!("cannot be used: {error}"),
    };
    Trouble::new(format!(
        "port {port} {why}. Take another: cargo xtask serve --port {other}"
    ))
}
