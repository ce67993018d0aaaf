//! A sheet over the whole screen, for the Fire and Burn cards and for questions that must be answered alone.

use leptos::{html, prelude::*};

use super::sign::{SignKind, sign_picture};

/// A modal sheet: what lies beneath cannot be touched or read until it is closed.
#[component]
pub fn Sheet(
    /// Whether it is open.
    #[prop(into)]
    open: Signal<bool>,
    /// Called when it was closed by its button or by the escape key.
    #[prop(into)]
    on_close: Callback<()>,
    /// Its title.
    #[prop(into)]
    title: String,
    /// The sign beside the title.
    #[prop(optional, into)]
    sign: Option<SignKind>,
    /// What its button says.
    #[prop(into)]
    close: String,
    /// Its test id; the button's is `testid-close`.
    #[prop(into)]
    testid: String,
    /// What it holds.
    children: Children,
) -> impl IntoView {
    let node = NodeRef::<html::Dialog>::new();
    Effect::new(move || {
        let Some(dialog) = node.get() else { return };
        if open.get() == dialog.open() {
            return;
        }
        if open.get() {
            // A dialog that is not in the page cannot be shown over it; shown in place it still holds its words.
            if dialog.show_modal().is_err() {
                dialog.set_open(true);
            }
        } else {
            dialog.close();
        }
    });
    let title_id = format!("{testid}-title");
    let labelled_by = title_id.clone();
    view! {
        <dialog
            class="sheet"
            node_ref=node
            aria-labelledby=labelled_by
            data-testid=testid.clone()
            on:cancel=move |_: leptos::ev::Event| on_close.run(())
        >
            <div class="sheet-in">
                <div class="sheet-top">
                    {sign.map(sign_picture)} <h1 id=title_id>{title}</h1>
                    <button
                        type="button"
                        data-testid=format!("{testid}-close")
                        on:click=move |_| on_close.run(())
                    >
                        {close}
                    </button>
                </div>
                {children()}
            </div>
        </dialog>
    }
}
