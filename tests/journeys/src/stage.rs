//! What a journey stands on: the release served from a folder, a fresh phone, and a fair ending.

use crate::export::Export;
use crate::fault::{Fault, Outcome, fault};
use crate::kitchens::EVENING;
use crate::phone::{Phone, Screen, TALL};
use std::path::{Path, PathBuf};
use xtask::site::Site;

/// The site and a phone.
pub struct Stage {
    /// The server of the site; stop it and the network is gone.
    pub site: Site,
    /// The phone.
    pub phone: Phone,
    scratch: PathBuf,
    phones: u32,
}

impl Stage {
    /// Opens the site on the phone.
    pub async fn open(&mut self) -> Outcome {
        self.phone.open(&self.site.url()).await
    }

    /// Visits the site until the phone keeps the app, then takes the server away: from here on there is no network.
    pub async fn open_then_offline(&mut self) -> Outcome {
        self.open().await?;
        self.phone.keeps_the_app().await?;
        self.site.stop();
        Ok(())
    }

    /// Opens the site on a Wednesday evening in June: every journey of a trading day begins so.
    pub async fn evening(&mut self) -> Outcome {
        self.phone.set_wall_to(EVENING).await?;
        self.open().await
    }

    /// The demo kitchen on that evening.
    pub async fn demo(&mut self) -> Outcome {
        self.evening().await?;
        self.phone.tap("start-demo").await?;
        self.phone.see("pan-1").await.map(drop)
    }

    /// A kitchen brought in from an export on that evening.
    pub async fn kitchen(&mut self, export: &str) -> Outcome {
        self.evening().await?;
        let file = self.scratch.join("kitchen.json");
        std::fs::write(&file, export)?;
        self.phone.pick_file("import-file", &file).await?;
        self.phone.tap("import-go-on").await?;
        self.phone.see("pan-1").await.map(drop)
    }

    /// The log as the phone exports it now.
    pub async fn export(&mut self) -> Outcome<Export> {
        self.phone.forget_downloads()?;
        self.phone.go("office").await?;
        self.phone.tap("export").await?;
        Export::read(self.phone.downloaded(".json").await?)
    }

    /// Kills the browser, starts it again on the same profile, and opens the site.
    pub async fn kill_and_open(&mut self) -> Outcome {
        self.phone.restart_on_same_profile().await?;
        self.open().await
    }

    /// Another phone, which shares nothing with the first; close it when done.
    pub async fn another_phone(&mut self, screen: Screen) -> Outcome<Phone> {
        self.phones += 1;
        Phone::new(&self.scratch.join(format!("phone{}", self.phones)), screen).await
    }

    /// A folder of this journey's own, gone when it ends.
    #[must_use]
    pub fn scratch(&self) -> &Path {
        &self.scratch
    }
}

/// Cargo's target folder.
#[must_use]
pub fn target_dir() -> PathBuf {
    std::env::var_os("CARGO_TARGET_DIR").map_or_else(|| xtask::shell::root().join("target"), PathBuf::from)
}

/// The one in the middle of some measures.
#[must_use]
pub fn median(mut measures: Vec<f64>) -> f64 {
    measures.sort_by(f64::total_cmp);
    measures.get(measures.len() / 2).copied().unwrap_or(f64::NAN)
}

/// Copies the release into `to`, for a journey that changes it.
pub fn copy_of_dist(to: &Path) -> Outcome {
    let files = xtask::finish::walk(&xtask::build::dist())?;
    for (name, from) in files.iter().filter(|(name, _)| !name.starts_with(".stage/")) {
        let target = to.join(name);
        std::fs::create_dir_all(target.parent().unwrap_or(to))?;
        std::fs::copy(from, target)?;
    }
    Ok(())
}

/// Plays a journey on the release with a usual phone. See [`journey_on`].
pub async fn journey(name: &str, play: impl AsyncFnOnce(&mut Stage) -> Outcome) -> Outcome {
    journey_on(name, TALL, play).await
}

/// Plays a journey on the release, served under a sub-folder as a host might, with a phone of this screen.
///
/// Whatever the play does, the browser is closed. It fails when the play fails, with a screenshot, and when a page
/// had errors the play did not take out by [`Phone::faults`].
pub async fn journey_on(name: &str, screen: Screen, play: impl AsyncFnOnce(&mut Stage) -> Outcome) -> Outcome {
    let dist = xtask::build::dist();
    if !dist.join("index.html").is_file() {
        return fault("there is no release to play on: run cargo xtask build");
    }
    let scratch = target_dir()
        .join("journeys")
        .join(format!("{name}-{}", std::process::id()));
    let site = Site::start(&dist, "/any/folder/", 0)?;
    let phone = Phone::new(&scratch.join("phone"), screen).await?;
    let mut stage = Stage {
        site,
        phone,
        scratch,
        phones: 0,
    };
    let mut end = play(&mut stage).await;
    if let Err(Fault(words)) = end {
        end = Err(Fault(format!("{words}\n{}", last_sight(&mut stage.phone, name).await)));
    } else if let Ok(faults) = stage.phone.faults().await
        && !faults.is_empty()
    {
        end = fault(format!("the page had errors:\n{}", faults.join("\n")));
    }
    let Stage {
        site, phone, scratch, ..
    } = stage;
    let closed = phone.close().await;
    drop(site);
    std::fs::remove_dir_all(&scratch).ok();
    end.and(closed)
}

/// What could be seen when a journey failed: a picture, the words on the screen, the page's errors.
async fn last_sight(phone: &mut Phone, name: &str) -> String {
    let shot = phone.shot(&format!("FAILED-{name}")).await;
    let shot = shot.map_or_else(|Fault(why)| why, |file| file.display().to_string());
    let words = phone.run("return document.body?.innerText.slice(0, 1500)", &[]).await;
    let words = words
        .ok()
        .and_then(|words| words.as_str().map(str::to_owned))
        .unwrap_or_default();
    let faults = phone.faults().await.unwrap_or_default().join("\n");
    format!("picture: {shot}\non the screen: {words}\nerrors: {faults}")
}
