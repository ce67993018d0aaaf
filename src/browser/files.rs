//! Files out of and into the app: an export saved, an import read.

use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, BlobPropertyBag, File, HtmlAnchorElement, HtmlInputElement, Url};

/// The browser would not save or read; its own words, for the maintainer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FileFault(pub String);

impl From<JsValue> for FileFault {
    fn from(value: JsValue) -> Self {
        let told = value
            .dyn_ref::<js_sys::Error>()
            .map(|error| String::from(error.message()));
        Self(told.unwrap_or_else(|| format!("{value:?}")))
    }
}

fn missing(what: &str) -> FileFault {
    FileFault(format!("the page has no {what}"))
}

/// Hands `text` to the phone as a file called `name`. Where it goes and whether it is kept is the phone's affair, and
/// it does not tell.
pub fn download(name: &str, media_type: &str, text: &str) -> Result<(), FileFault> {
    let options = BlobPropertyBag::new();
    options.set_type(media_type);
    let blob = Blob::new_with_str_sequence_and_options(&js_sys::Array::of1(&text.into()), &options)?;
    let url = Url::create_object_url_with_blob(&blob)?;
    let document = web_sys::window()
        .and_then(|window| window.document())
        .ok_or_else(|| missing("document"))?;
    let link: HtmlAnchorElement = document.create_element("a")?.dyn_into().map_err(|_| missing("links"))?;
    link.set_href(&url);
    link.set_download(name);
    link.click();
    // Freed after the browser has had time to take it; at once, some browsers save nothing.
    let free = wasm_bindgen::closure::Closure::once_into_js(move || Url::revoke_object_url(&url));
    if let Some(window) = web_sys::window() {
        window.set_timeout_with_callback_and_timeout_and_arguments_0(free.unchecked_ref(), 60_000)?;
    }
    Ok(())
}

/// The file a person picked in an `<input type="file">`, which is emptied so that the same file can be picked again.
#[must_use]
pub fn picked(input: &HtmlInputElement) -> Option<File> {
    let file = input.files()?.get(0);
    input.set_value("");
    file
}

/// The text of a file. Bytes that are no UTF-8 come as U+FFFD and will be refused by whoever reads the text.
pub async fn read_text(file: &File) -> Result<String, FileFault> {
    let text = JsFuture::from(file.text()).await?;
    text.as_string().ok_or_else(|| missing("text in that file"))
}
