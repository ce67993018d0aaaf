//! Looking closely: screenshots, sizes, and what axe-core says about accessibility.

use crate::fault::{Outcome, fault};
use crate::phone::Phone;
use crate::stage::target_dir;
use serde_json::{Value, json};
use std::fmt;
use std::path::PathBuf;

/// One rule of axe-core that the page breaks.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Violation {
    /// The rule.
    pub rule: String,
    /// What it wants.
    pub help: String,
    /// Where, as selectors.
    pub places: Vec<String>,
}

impl fmt::Display for Violation {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {} at {}", self.rule, self.help, self.places.join(", "))
    }
}

/// An element's place and size in CSS pixels, and its text's.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Size {
    /// From the left edge of the window.
    pub x: f64,
    /// From its top edge.
    pub y: f64,
    /// Across.
    pub width: f64,
    /// Down.
    pub height: f64,
    /// Its font size.
    pub font: f64,
}

impl Phone {
    /// Saves what the phone shows as `target/shots/<name>.png`, and returns where.
    pub async fn shot(&self, name: &str) -> Outcome<PathBuf> {
        let folder = target_dir().join("shots");
        std::fs::create_dir_all(&folder)?;
        let file = folder.join(format!("{name}.png"));
        std::fs::write(&file, self.browser()?.screenshot_as_png().await?)?;
        Ok(file)
    }

    /// Where the element called `id` is and how large.
    pub async fn size(&self, id: &str) -> Outcome<Size> {
        let element = self.find(id).await?;
        let script = "const { x, y, width, height } = arguments[0].getBoundingClientRect();
            return [x, y, width, height, parseFloat(getComputedStyle(arguments[0]).fontSize)];";
        let got = self.browser()?.execute(script, vec![element.to_json()?]).await?;
        let [x, y, width, height, font] = got.convert()?;
        Ok(Size {
            x,
            y,
            width,
            height,
            font,
        })
    }

    /// Shows light or dark, as the phone's own setting would.
    pub async fn set_dark(&self, dark: bool) -> Outcome {
        let value = if dark { "dark" } else { "light" };
        let features = json!({ "features": [{ "name": "prefers-color-scheme", "value": value }] });
        self.cdp("Emulation.setEmulatedMedia", features).await.map(drop)
    }

    /// Sets the reader's text size in per cent of the usual, by the root's font size.
    pub async fn set_text_size(&self, per_cent: u32) -> Outcome {
        let script = "document.documentElement.style.fontSize = `${arguments[0]}%`";
        self.run(script, &[json!(per_cent)]).await.map(drop)
    }

    /// What axe-core finds against the page as it stands (its rules for WCAG 2.2 A and AA, and best practice).
    pub async fn axe(&self) -> Outcome<Vec<Violation>> {
        let Some(file) = std::env::var_os("PANWARD_AXE") else {
            return fault("axe-core is not at hand: run cargo xtask test accessibility");
        };
        if self.run("return typeof axe === 'undefined'", &[]).await? == true {
            // As a window's own script, so that it stays for the next look at the same page.
            let source = std::fs::read_to_string(file)?;
            self.cdp("Runtime.evaluate", json!({ "expression": source })).await?;
        }
        let script = "const done = arguments[arguments.length - 1];
             axe.run(document, { resultTypes: ['violations'] }).then((found) => done(found.violations), (error) => done(String(error)));";
        let found = self.browser()?.execute_async(script, vec![]).await?.json().clone();
        let Value::Array(found) = found else {
            return fault(format!("axe-core failed: {found}"));
        };
        let text = |value: &Value| value.as_str().unwrap_or_default().to_owned();
        let places = |rule: &Value| -> Vec<String> {
            rule["nodes"]
                .as_array()
                .into_iter()
                .flatten()
                .map(|node| node["target"].to_string())
                .collect()
        };
        let violation = |rule: &Value| Violation {
            rule: text(&rule["id"]),
            help: text(&rule["help"]),
            places: places(rule),
        };
        Ok(found.iter().map(violation).collect())
    }

    /// Fails unless axe-core finds nothing.
    pub async fn accessible(&self, screen: &str) -> Outcome {
        let found = self.axe().await?;
        if found.is_empty() {
            return Ok(());
        }
        let told: Vec<String> = found.iter().map(ToString::to_string).collect();
        fault(format!("{screen}: {}", told.join("; ")))
    }
}
