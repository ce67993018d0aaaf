//! A hand on the phone: it finds things by their `data-testid`, touches them and counts its touches.

use crate::fault::{Fault, Outcome};
use crate::phone::Phone;
use crate::wait::until;
use serde_json::{Value, json};
use std::path::Path;
use thirtyfour::WebElement;
use thirtyfour::error::{WebDriverError, WebDriverErrorInner};

/// Touches that are free: they stop or help, and nobody may be counted out of them.
const FREE: &[&str] = &["stop", "fire", "burn"];

/// The one element on the screen with this id that can be seen; several are a mistake of the page.
const SEEN: &str = "const seen = [...document.querySelectorAll(`[data-testid=\"${arguments[0]}\"]`)]
        .filter((it) => it.checkVisibility({ visibilityProperty: true, opacityProperty: true }));
    if (seen.length > 1) throw new Error(`${seen.length} elements are called ${arguments[0]}`);
    return seen[0] ?? null;";

const CENTRE: &str = "arguments[0].scrollIntoView({ block: 'center', behavior: 'instant' })";

/// Whether the page answers: the app says so, or has failed and left the page to itself.
const ANSWERS: &str = "const { ready, app } = document.documentElement.dataset;
    return ready !== undefined || app === 'failed';";

impl Phone {
    /// The visible element called `id`, waited for.
    pub async fn find(&self, id: &str) -> Outcome<WebElement> {
        until(&format!("to see {id}"), async || self.look(id).await).await
    }

    /// The visible element called `id`, if it is there now.
    pub async fn look(&self, id: &str) -> Outcome<Option<WebElement>> {
        let found = self.browser()?.execute(SEEN, vec![json!(id)]).await?;
        if found.json().is_null() {
            Ok(None)
        } else {
            Ok(Some(found.element()?))
        }
    }

    /// Waits for the element called `id` and returns its text.
    pub async fn see(&self, id: &str) -> Outcome<String> {
        until(&format!("to read {id}"), async || match self.look(id).await? {
            Some(element) => unless_gone(element.text().await),
            None => Ok(None),
        })
        .await
    }

    /// Waits until the text of the element called `id` holds `part`.
    pub async fn sees(&self, id: &str, part: &str) -> Outcome {
        let mut last = String::new();
        let held = until("", async || {
            if let Some(element) = self.look(id).await? {
                last = unless_gone(element.text().await)?.unwrap_or_default();
            }
            Ok(last.contains(part).then_some(()))
        });
        held.await
            .map_err(|_| Fault(format!("{id} never said \"{part}\"; it says \"{last}\"")))
    }

    /// Waits until no element called `id` can be seen.
    pub async fn gone(&self, id: &str) -> Outcome {
        until(&format!("not to see {id}"), async || {
            Ok(self.look(id).await?.is_none().then_some(()))
        })
        .await
    }

    /// One touch on the element called `id`, once it is there, enabled, and the screen answers.
    pub async fn tap(&mut self, id: &str) -> Outcome {
        until(&format!("to tap {id}"), async || {
            if self.run(ANSWERS, &[]).await? != true {
                return Ok(None);
            }
            match self.look(id).await? {
                Some(element) if unless_gone(element.is_enabled().await)? == Some(true) => {
                    // Brought to where nothing stands over it, as a finger would.
                    let reached = self.browser()?.execute(CENTRE, vec![element.to_json()?]).await;
                    if unless_gone(reached)?.is_none() {
                        return Ok(None);
                    }
                    // Gone between look and touch means not touched: the next look finds its successor.
                    unless_gone(element.click().await)
                }
                _ => Ok(None),
            }
        })
        .await?;
        self.count(id);
        Ok(())
    }

    /// One touch at once, whether the screen answers yet or not: what an impatient finger does.
    pub async fn jab(&mut self, id: &str) -> Outcome {
        let (x, y) = self.middle(id).await?;
        self.touch(&[("touchStart", Some((x, y))), ("touchEnd", None)]).await?;
        self.count(id);
        Ok(())
    }

    /// Two touches as fast as a finger can.
    pub async fn double_tap(&mut self, id: &str) -> Outcome {
        let at = Some(self.middle(id).await?);
        self.touch(&[
            ("touchStart", at),
            ("touchEnd", None),
            ("touchStart", at),
            ("touchEnd", None),
        ])
        .await?;
        self.count(id);
        self.count(id);
        Ok(())
    }

    /// A wet finger that comes down on one element and leaves on another.
    pub async fn drag(&mut self, from: &str, to: &str) -> Outcome {
        let (a, b) = (self.middle(from).await?, self.middle(to).await?);
        self.touch(&[("touchStart", Some(a)), ("touchMove", Some(b)), ("touchEnd", None)])
            .await
    }

    /// Types into the field called `id` in place of what stands there: one touch, as a number is.
    pub async fn enter(&mut self, id: &str, text: &str) -> Outcome {
        let field = self.find(id).await?;
        field.clear().await?;
        field.send_keys(text).await?;
        self.count(id);
        Ok(())
    }

    /// Picks a file in the (perhaps hidden) file input called `id`.
    pub async fn pick_file(&self, id: &str, file: &Path) -> Outcome {
        let input = self
            .browser()?
            .find(thirtyfour::By::Css(format!("[data-testid=\"{id}\"]")))
            .await?;
        Ok(input.send_keys(file.display().to_string()).await?)
    }

    /// Touches so far that count, since the phone was new or [`Phone::forget_touches`].
    #[must_use]
    pub fn touches(&self) -> u32 {
        self.touches
    }

    /// Counts from nought again, and returns what was counted.
    pub fn forget_touches(&mut self) -> u32 {
        std::mem::take(&mut self.touches)
    }

    fn count(&mut self, id: &str) {
        self.touches += u32::from(!FREE.contains(&id));
    }

    async fn middle(&self, id: &str) -> Outcome<(f64, f64)> {
        let element = self.find(id).await?;
        element.scroll_into_view().await?;
        let script = "const box = arguments[0].getBoundingClientRect();
            return [box.x + box.width / 2, box.y + box.height / 2];";
        let middle: Value = self
            .browser()?
            .execute(script, vec![element.to_json()?])
            .await?
            .json()
            .clone();
        Ok((
            middle[0].as_f64().unwrap_or_default(),
            middle[1].as_f64().unwrap_or_default(),
        ))
    }

    async fn touch(&self, moves: &[(&str, Option<(f64, f64)>)]) -> Outcome {
        for (kind, at) in moves {
            let points: Vec<Value> = at.iter().map(|(x, y)| json!({ "x": x, "y": y })).collect();
            self.cdp(
                "Input.dispatchTouchEvent",
                json!({ "type": kind, "touchPoints": points }),
            )
            .await?;
        }
        Ok(())
    }
}

/// `None` for an element that was replaced by a repaint in the meantime.
fn unless_gone<T>(answer: Result<T, WebDriverError>) -> Outcome<Option<T>> {
    match answer {
        Ok(value) => Ok(Some(value)),
        Err(error) if matches!(*error, WebDriverErrorInner::StaleElementReference(_)) => Ok(None),
        Err(error) => Err(error.into()),
    }
}
