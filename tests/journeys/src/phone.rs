//! A phone: a browser on a profile of its own, which can be killed at any moment and started again.

use crate::clock::Skew;
use crate::driver::Driver;
use crate::fault::{Outcome, fault};
use crate::wait::until;
use serde_json::{Value, json};
use std::path::{Path, PathBuf};
use std::process::Command;
use thirtyfour::common::log::LoggingPrefsLogLevel;
use thirtyfour::{ChromiumLikeCapabilities, DesiredCapabilities, WebDriver, WindowHandle};

/// A screen in CSS pixels.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Screen {
    /// Pixels across.
    pub width: u32,
    /// Pixels down.
    pub height: u32,
}

/// A usual phone.
pub const TALL: Screen = Screen {
    width: 412,
    height: 915,
};
/// The smallest phone the app is drawn for.
pub const SMALL: Screen = Screen {
    width: 360,
    height: 640,
};

/// A phone with its browser open.
pub struct Phone {
    driver: Driver,
    browser: Option<WebDriver>,
    home: PathBuf,
    screen: Screen,
    pub(crate) skew: Skew,
    pub(crate) touches: u32,
    faults: Vec<String>,
}

impl Phone {
    /// A new phone whose profile and downloads lie in `home`, which must not exist and goes with the phone.
    pub async fn new(home: &Path, screen: Screen) -> Outcome<Self> {
        std::fs::create_dir_all(home.join("downloads"))?;
        let mut phone = Self {
            driver: Driver::start()?,
            browser: None,
            home: home.to_path_buf(),
            screen,
            skew: Skew::default(),
            touches: 0,
            faults: Vec::new(),
        };
        phone.start().await?;
        Ok(phone)
    }

    /// The browser, for what this library has no verb for.
    pub fn browser(&self) -> Outcome<&WebDriver> {
        self.browser
            .as_ref()
            .map_or_else(|| fault("the browser is not running: start it first"), Ok)
    }

    /// Starts the browser on the phone's own profile, as after [`Phone::kill9`]; open a page next.
    pub async fn start(&mut self) -> Outcome {
        let mut wanted = DesiredCapabilities::chrome();
        for argument in [
            "--headless=new",
            // Needed for root, as in a container; the only site it sees is ours.
            "--no-sandbox",
            "--disable-dev-shm-usage",
            "--disable-gpu",
            "--hide-crash-restore-bubble",
            "--force-device-scale-factor=1",
            &format!("--window-size={},{}", self.screen.width, self.screen.height),
            &format!("--user-data-dir={}", self.home.join("profile").display()),
        ] {
            wanted.add_arg(argument)?;
        }
        wanted.set_browser_log_level(LoggingPrefsLogLevel::All)?;
        let downloads = self.home.join("downloads").display().to_string();
        wanted.add_experimental_option("prefs", json!({ "download.default_directory": downloads }))?;
        self.browser = Some(WebDriver::new(self.driver.url(), wanted).await?);
        self.dress().await
    }

    /// Opens another window (a tab) in front and returns the handles of the one left and the new one. The page left
    /// is hidden, as when the phone is locked.
    pub async fn new_window(&mut self) -> Outcome<(WindowHandle, WindowHandle)> {
        let left = self.browser()?.window().await?;
        let new = self.browser()?.new_tab().await?;
        self.to_window(&new).await?;
        Ok((left, new))
    }

    /// Brings a window to the front.
    pub async fn to_window(&mut self, window: &WindowHandle) -> Outcome {
        self.browser()?.switch_to_window(window.clone()).await?;
        self.dress().await
    }

    /// Gives the window in front the phone's screen and clocks.
    async fn dress(&self) -> Outcome {
        let Screen { width, height } = self.screen;
        self.cdp(
            "Emulation.setDeviceMetricsOverride",
            json!({ "width": width, "height": height, "deviceScaleFactor": 1, "mobile": true }),
        )
        .await?;
        self.cdp("Emulation.setTouchEmulationEnabled", json!({ "enabled": true }))
            .await?;
        self.set_clock().await
    }

    /// Any command of the DevTools protocol to the page in front.
    pub async fn cdp(&self, method: &str, parameters: Value) -> Outcome<Value> {
        Ok(self.browser()?.cdp().send_raw(method, parameters).await?)
    }

    /// Runs JavaScript in the page: `arguments` holds `args`; returns what it returns.
    pub async fn run(&self, script: &str, args: &[Value]) -> Outcome<Value> {
        Ok(self.browser()?.execute(script, args.to_vec()).await?.json().clone())
    }

    /// Runs JavaScript that answers later, by calling its last argument.
    pub async fn run_async(&self, script: &str) -> Outcome<Value> {
        Ok(self.browser()?.execute_async(script, Vec::new()).await?.json().clone())
    }

    /// Opens an address and waits until the page there is ready.
    pub async fn open(&mut self, url: &str) -> Outcome {
        self.browser()?.goto(url).await?;
        self.ready().await
    }

    /// Opens an address without waiting for the app, which may be meant not to come up.
    pub async fn open_unready(&mut self, url: &str) -> Outcome {
        Ok(self.browser()?.goto(url).await?)
    }

    /// Reloads the page and waits until it is ready.
    pub async fn reload(&mut self) -> Outcome {
        self.browser()?.refresh().await?;
        self.ready().await
    }

    /// Goes to the screen at this address of the app, as a link would, and waits until it is ready.
    pub async fn go(&mut self, address: &str) -> Outcome {
        self.run("delete window.__sight; location.hash = arguments[0]", &[json!(address)])
            .await?;
        let head = address.split('/').next().unwrap_or_default();
        self.find(&format!("screen-{head}")).await?;
        self.ready().await
    }

    /// The address within the app that the link called `id` leads to.
    pub async fn address_of(&self, id: &str) -> Outcome<String> {
        let link = self.find(id).await?;
        let href = self
            .run("return arguments[0].getAttribute('href')", &[link.to_json()?])
            .await?;
        match href.as_str().and_then(|href| href.strip_prefix('#')) {
            Some(address) => Ok(address.to_owned()),
            None => fault(format!("{id} is no link into the app: {href}")),
        }
    }

    /// The phone's Back.
    pub async fn back(&mut self) -> Outcome {
        self.browser()?.back().await?;
        self.ready().await
    }

    /// Waits until the app says that its screen is painted and answers.
    pub async fn ready(&self) -> Outcome {
        until("html[data-ready]", async || {
            let ready = self
                .run("return document.documentElement.dataset.ready !== undefined", &[])
                .await?;
            Ok((ready == true).then_some(()))
        })
        .await
    }

    /// Waits until one visit's worth of the app is kept on the phone and the service worker answers for it.
    pub async fn keeps_the_app(&self) -> Outcome {
        until("a service worker in charge of the page", async || {
            let script = "return navigator.serviceWorker.controller?.state === 'activated'";
            Ok((self.run(script, &[]).await? == true).then_some(()))
        })
        .await
    }

    /// Kills the browser as a power cut would, and waits until it is gone.
    pub async fn kill9(&mut self) -> Outcome {
        self.collect_faults().await?;
        let Some(browser) = self.browser.take() else {
            return fault("there is no browser to kill");
        };
        let pid = browser.capabilities().get("goog:processID").and_then(Value::as_u64);
        // Nobody is left to say goodbye to.
        browser.leak().ok();
        let Some(pid) = pid else {
            return fault("the browser did not tell its process id");
        };
        Command::new("kill").args(["-9", &pid.to_string()]).status()?;
        until("the end of the browser", async || Ok((!alive(pid)).then_some(()))).await
    }

    /// Kills the browser and starts it again on the same profile; open a page next.
    pub async fn restart_on_same_profile(&mut self) -> Outcome {
        self.kill9().await?;
        self.start().await
    }

    /// Grants a permission by its DevTools name, such as "screen-wake-lock", which a headless browser refuses unasked.
    pub async fn grant(&self, permission: &str) -> Outcome {
        let wish = json!({ "permission": { "name": permission }, "setting": "granted" });
        self.cdp("Browser.setPermission", wish).await.map(drop)
    }

    /// The text of the one file downloaded whose name holds `part`, once it is whole.
    pub async fn downloaded(&self, part: &str) -> Outcome<String> {
        let folder = self.home.join("downloads");
        until(&format!("a download called {part}"), async || {
            for entry in std::fs::read_dir(&folder)? {
                let path = entry?.path();
                let name = path
                    .file_name()
                    .map(|name| name.to_string_lossy().into_owned())
                    .unwrap_or_default();
                if name.contains(part) && !name.ends_with(".crdownload") && !name.starts_with(".org.chromium") {
                    return Ok(Some(std::fs::read_to_string(&path)?));
                }
            }
            Ok(None)
        })
        .await
    }

    /// Takes away what was downloaded so far, so that the next download is the only one.
    pub fn forget_downloads(&self) -> Outcome {
        let folder = self.home.join("downloads");
        std::fs::remove_dir_all(&folder)?;
        Ok(std::fs::create_dir_all(&folder)?)
    }

    /// Everything that went wrong in the pages so far: policy violations, uncaught errors, console errors, failed
    /// requests. Emptied by the call: a journey that provokes one takes it out here, or fails by it.
    pub async fn faults(&mut self) -> Outcome<Vec<String>> {
        self.collect_faults().await?;
        Ok(std::mem::take(&mut self.faults))
    }

    async fn collect_faults(&mut self) -> Outcome {
        let Some(browser) = &self.browser else { return Ok(()) };
        let severe = browser
            .browser_log()
            .await?
            .into_iter()
            .filter(|entry| entry.level == "SEVERE");
        self.faults.extend(severe.map(|entry| entry.message));
        Ok(())
    }

    /// Closes the browser and takes the phone's files away.
    pub async fn close(mut self) -> Outcome {
        if let Some(browser) = self.browser.take() {
            browser.quit().await?;
        }
        Ok(())
    }
}

impl Drop for Phone {
    fn drop(&mut self) {
        // Left behind, it is only rubbish under target/.
        let _ = std::fs::remove_dir_all(&self.home);
    }
}

fn alive(pid: u64) -> bool {
    // A killed child of chromedriver stays in the table as a zombie until it is waited for.
    let stat = std::fs::read_to_string(format!("/proc/{pid}/stat")).unwrap_or_default();
    stat.rsplit_once(") ").is_some_and(|(_, rest)| !rest.starts_with('Z'))
}
