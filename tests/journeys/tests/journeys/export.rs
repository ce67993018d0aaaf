//! Everything out as one file and into an empty phone: the same bytes but for the moment.

use journeys::{Export, Outcome, TALL, journey, kitchen_with};
use panward::domain::facts::setup::OutBy;

#[tokio::test]
async fn comes_out_of_an_empty_phone_as_it_went_in() -> Outcome {
    journey("export_import", async |stage| {
        stage.kitchen(&kitchen_with(OutBy::BuiltIn).await?).await?;
        // Something of this phone's own is in it too.
        stage.phone.go("filter").await?;
        stage.phone.press("begin-job").await?;
        let first = stage.export().await?;
        assert!(first.entries().len() > 5, "{} entries", first.entries().len());
        let file = stage.scratch().join("log.json");
        std::fs::write(&file, first.text())?;

        let mut second = stage.another_phone(TALL).await?;
        second.open(&stage.site.url()).await?;
        second.pick_file("import-file", &file).await?;
        second.tap("import-go-on").await?;
        second.see("screen-today").await?;
        second.go("office").await?;
        second.tap("export").await?;
        let again = Export::read(second.downloaded(".json").await?)?;
        assert_ne!(first.text(), again.text(), "made at the same moment?");
        assert_eq!(first.without_moment(), again.without_moment());
        second.close().await
    })
    .await
}

#[tokio::test]
async fn refuses_a_demo_and_a_broken_file_in_words() -> Outcome {
    journey("import_refused", async |stage| {
        stage.demo().await?;
        let demo = stage.export().await?;
        let whole = kitchen_with(OutBy::Nozzle).await?;
        let broken = whole.replacen("\"name\":\"1\"", "\"name\":\"7\"", 1);
        assert_ne!(whole, broken);

        let mut second = stage.another_phone(TALL).await?;
        second.open(&stage.site.url()).await?;
        for (name, text) in [("demo", demo.text()), ("broken", &broken)] {
            let file = stage.scratch().join(format!("{name}.json"));
            std::fs::write(&file, text)?;
            second.pick_file("import-file", &file).await?;
            let why = second.see("import-refused").await?;
            assert!(why.len() > 20, "{name} is refused without a word: {why}");
            second.reload().await?;
        }
        second.see("screen-first").await?;
        second.close().await
    })
    .await
}
