//! Around every screen but a run: title, Fire and Burn, the standing warning, the tabs.

use leptos::prelude::*;

use super::buttons::Emergency;
use super::sign::{SignKind, sign_picture};

/// One tab of the bottom bar.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Tab {
    /// Its key, handed back when it is pressed; its test id is `tab-key`.
    pub key: &'static str,
    /// What it says.
    pub words: String,
}

/// The standing warnings, one line for each pan whose oil is out. Nothing is drawn when there is none.
#[component]
pub fn EmptyBanners(
    /// The lines, worded: "PAN 2 EMPTY, DO NOT LIGHT".
    #[prop(into)]
    lines: Signal<Vec<String>>,
) -> impl IntoView {
    move || {
        lines
            .get()
            .into_iter()
            .map(|line| {
                view! {
                    <div class="empty-banner" role="status" data-testid="pan-empty">
                        {sign_picture(SignKind::NoLighting)} <span>{line}</span>
                    </div>
                }
            })
            .collect_view()
    }
}

/// The frame of a screen: what stands above and below what it holds.
#[component]
pub fn Shell(
    /// The screen's title.
    #[prop(into)]
    title: Signal<String>,
    /// A small line above the title.
    #[prop(optional, into)]
    eyebrow: Signal<String>,
    /// The words for fire and burn.
    emergency: (String, String),
    /// Opens the fire card.
    #[prop(into)]
    on_fire: Callback<()>,
    /// Opens the burn card.
    #[prop(into)]
    on_burn: Callback<()>,
    /// The standing warnings.
    #[prop(into)]
    empty: Signal<Vec<String>>,
    /// The tabs; none before the set-up.
    tabs: Vec<Tab>,
    /// What the row of tabs is called, for who cannot see it.
    #[prop(into)]
    tabs_label: String,
    /// The key of the tab that is shown.
    #[prop(into)]
    current: Signal<&'static str>,
    /// Called with a tab's key.
    #[prop(into)]
    on_tab: Callback<&'static str>,
    /// What the screen holds.
    children: Children,
) -> impl IntoView {
    let (fire, burn) = emergency;
    let bar = (!tabs.is_empty()).then(|| {
        let buttons = tabs
            .into_iter()
            .map(|Tab { key, words }| {
                view! {
                    <button
                        type="button"
                        aria-current=move || (current.get() == key).then_some("page")
                        data-testid=format!("tab-{key}")
                        on:click=move |_| on_tab.run(key)
                    >
                        {words}
                    </button>
                }
            })
            .collect_view();
        view! {
            <nav class="tabs" aria-label=tabs_label>
                {buttons}
            </nav>
        }
    });
    view! {
        <div class="shell">
            <EmptyBanners lines=empty />
            <header class="top">
                <div class="top-words">
                    {move || Some(eyebrow.get()).filter(|words| !words.is_empty()).map(|words| view! { <p class="eyebrow">{words}</p> })}
                    <h1>{title}</h1>
                </div>
                <Emergency fire=fire burn=burn on_fire=on_fire on_burn=on_burn />
            </header>
            <main class="body">{children()}</main>
            {bar}
        </div>
    }
}
