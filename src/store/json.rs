//! JSON as the log holds it: words, whole numbers, yes or no, lists and objects, no fractions and no nulls. A line is read
//! into one tree that borrows from it; a body is written field by field.
//!
//! Serde's derived readers for the log's 24 shapes weighed 40 KiB in the shipped app and read it at a third of the
//! speed; the figures stand in DEVELOPERS.md. `tests/json.rs` holds this reader against `serde_json` as its oracle.

use std::borrow::Cow;
use std::fmt::Write as _;

/// A value.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Json<'a> {
    /// A string.
    Word(Cow<'a, str>),
    /// A whole number.
    Whole(i64),
    /// True or false.
    Flag(bool),
    /// A list.
    List(Vec<Json<'a>>),
    /// An object.
    Object(Fields<'a>),
}

impl Json<'_> {
    /// Writes it.
    pub fn put(&self, out: &mut Out) {
        match self {
            Self::Word(word) => out.word(word),
            Self::Whole(number) => out.whole(*number),
            Self::Flag(flag) => out.flag(*flag),
            Self::List(list) => {
                out.open('[');
                list.iter().for_each(|one| one.put(out));
                out.close(']');
            }
            Self::Object(Fields(pairs)) => {
                out.open('{');
                for (name, value) in pairs {
                    out.name(name);
                    value.put(out);
                }
                out.close('}');
            }
        }
    }
}

/// The fields of an object, in their order.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Fields<'a>(Vec<(Cow<'a, str>, Json<'a>)>);

impl<'a> Fields<'a> {
    /// Takes a field out, if it is there.
    pub fn take(&mut self, name: &str) -> Option<Json<'a>> {
        let at = self.0.iter().position(|(known, _)| known == name)?;
        Some(self.0.remove(at).1)
    }

    /// Whether a name stands here twice. JSON allows it; no shape of the log does.
    #[must_use]
    pub fn repeats(&self) -> bool {
        let mut names = self.0.iter().map(|(name, _)| name);
        (1..)
            .zip(&mut names)
            .any(|(next, name)| self.0[next..].iter().any(|(other, _)| other == name))
    }

    /// The name of a field that nobody took.
    #[must_use]
    pub fn left(&self) -> Option<&str> {
        self.0.first().map(|(name, _)| name.as_ref())
    }

    /// All of them, in their order.
    pub fn into_pairs(self) -> impl Iterator<Item = (Cow<'a, str>, Json<'a>)> {
        self.0.into_iter()
    }
}

/// The deepest nesting that is read. A line of the log needs five.
const DEPTH: u32 = 64;

/// Reads one value and nothing after it.
///
/// # Errors
/// What stands where something else is expected.
pub fn read(text: &str) -> Result<Json<'_>, &'static str> {
    let mut reader = Reader { text, at: 0, depth: 0 };
    let value = reader.value()?;
    match reader.next_byte() {
        None => Ok(value),
        Some(_) => Err("trailing characters"),
    }
}

struct Reader<'a> {
    text: &'a str,
    at: usize,
    depth: u32,
}

impl<'a> Reader<'a> {
    fn byte(&self) -> Option<u8> {
        self.text.as_bytes().get(self.at).copied()
    }

    /// The next byte that is no space, left standing.
    fn next_byte(&mut self) -> Option<u8> {
        while let Some(b' ' | b'\t' | b'\n' | b'\r') = self.byte() {
            self.at += 1;
        }
        self.byte()
    }

    fn value(&mut self) -> Result<Json<'a>, &'static str> {
        match self.next_byte().ok_or("cut short where a value is expected")? {
            b'"' => Ok(Json::Word(self.word()?)),
            b'{' => self.deeper(Self::object),
            b'[' => self.deeper(Self::list),
            b'-' | b'0'..=b'9' => Ok(Json::Whole(self.whole()?)),
            b't' => self.literal("true", true),
            b'f' => self.literal("false", false),
            _ => Err("expected value"),
        }
    }

    fn deeper(&mut self, read: fn(&mut Self) -> Result<Json<'a>, &'static str>) -> Result<Json<'a>, &'static str> {
        self.depth += 1;
        if self.depth > DEPTH {
            return Err("nested too deep");
        }
        self.at += 1;
        let value = read(self)?;
        self.depth -= 1;
        Ok(value)
    }

    fn literal(&mut self, word: &str, flag: bool) -> Result<Json<'a>, &'static str> {
        if !self.text[self.at..].starts_with(word) {
            return Err("expected value");
        }
        self.at += word.len();
        Ok(Json::Flag(flag))
    }

    fn whole(&mut self) -> Result<i64, &'static str> {
        let start = self.at;
        self.at += usize::from(self.byte() == Some(b'-'));
        let figures = self.at;
        while self.byte().is_some_and(|byte| byte.is_ascii_digit()) {
            self.at += 1;
        }
        let leading_nought = self.at - figures > 1 && self.text.as_bytes()[figures] == b'0';
        let minus_nought = figures > start && &self.text[figures..self.at] == "0";
        if figures == self.at || leading_nought || minus_nought || matches!(self.byte(), Some(b'.' | b'e' | b'E')) {
            return Err("not a whole number");
        }
        self.text[start..self.at].parse().map_err(|_| "number out of range")
    }

    fn list(&mut self) -> Result<Json<'a>, &'static str> {
        let mut list = Vec::new();
        if self.next_byte() == Some(b']') {
            self.at += 1;
            return Ok(Json::List(list));
        }
        loop {
            list.push(self.value()?);
            let next = self.next_byte();
            self.at += 1;
            match next {
                Some(b',') => {}
                Some(b']') => return Ok(Json::List(list)),
                _ => return Err("expected `,` or `]`"),
            }
        }
    }

    fn object(&mut self) -> Result<Json<'a>, &'static str> {
        let mut fields = Vec::with_capacity(8);
        if self.next_byte() == Some(b'}') {
            self.at += 1;
            return Ok(Json::Object(Fields(fields)));
        }
        loop {
            if self.next_byte() != Some(b'"') {
                return Err("a name is missing");
            }
            let name = self.word()?;
            if self.next_byte() != Some(b':') {
                return Err("expected `:`");
            }
            self.at += 1;
            let value = self.value()?;
            fields.push((name, value));
            let next = self.next_byte();
            self.at += 1;
            match next {
                Some(b',') => {}
                Some(b'}') => return Ok(Json::Object(Fields(fields))),
                _ => return Err("expected `,` or `}`"),
            }
        }
    }

    /// A string, from its first quotation mark. Borrowed where nothing in it is escaped.
    fn word(&mut self) -> Result<Cow<'a, str>, &'static str> {
        self.at += 1;
        let mut start = self.at;
        let mut unescaped: Option<String> = None;
        loop {
            match self.byte().ok_or("cut short inside a string")? {
                b'"' => {
                    let rest = &self.text[start..self.at];
                    self.at += 1;
                    return Ok(match unescaped {
                        None => Cow::Borrowed(rest),
                        Some(words) => Cow::Owned(words + rest),
                    });
                }
                b'\\' => {
                    let words = unescaped.get_or_insert_default();
                    words.push_str(&self.text[start..self.at]);
                    self.at += 1;
                    let character = self.escaped()?;
                    unescaped.get_or_insert_default().push(character);
                    start = self.at;
                }
                0..=0x1f => return Err("a control character inside a string"),
                _ => self.at += 1,
            }
        }
    }

    fn escaped(&mut self) -> Result<char, &'static str> {
        let byte = self.byte().ok_or("cut short inside a string")?;
        self.at += 1;
        Ok(match byte {
            b'"' => '"',
            b'\\' => '\\',
            b'/' => '/',
            b'b' => '\u{8}',
            b'f' => '\u{c}',
            b'n' => '\n',
            b'r' => '\r',
            b't' => '\t',
            b'u' => return self.by_number(),
            _ => return Err("invalid escape"),
        })
    }

    /// A character by its number in UTF-16, in one piece or in two.
    fn by_number(&mut self) -> Result<char, &'static str> {
        const BROKEN: &str = "half of a character";
        let high = self.hex4()?;
        if !(0xd800..0xdc00).contains(&high) {
            return char::from_u32(high).ok_or(BROKEN);
        }
        if !self.text[self.at..].starts_with("\\u") {
            return Err(BROKEN);
        }
        self.at += 2;
        let low = self.hex4()?;
        if !(0xdc00..0xe000).contains(&low) {
            return Err(BROKEN);
        }
        char::from_u32(0x1_0000 + ((high - 0xd800) << 10) + (low - 0xdc00)).ok_or(BROKEN)
    }

    fn hex4(&mut self) -> Result<u32, &'static str> {
        let hex = self.text.get(self.at..self.at + 4).ok_or("invalid escape")?;
        if !hex.bytes().all(|byte| byte.is_ascii_hexdigit()) {
            return Err("invalid escape");
        }
        self.at += 4;
        u32::from_str_radix(hex, 16).map_err(|_| "invalid escape")
    }
}

/// JSON being written: the same values always give the same bytes.
#[derive(Debug, Default)]
pub struct Out(String);

impl Out {
    /// Nothing yet.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// What was written.
    #[must_use]
    pub fn into_text(self) -> String {
        self.0
    }

    /// A comma, unless this is the first here.
    fn comma(&mut self) {
        if !self.0.is_empty() && !self.0.ends_with(['{', '[', ':']) {
            self.0.push(',');
        }
    }

    /// Begins an object or a list: `{` or `[`.
    pub fn open(&mut self, bracket: char) {
        self.comma();
        self.0.push(bracket);
    }

    /// Ends it.
    pub fn close(&mut self, bracket: char) {
        self.0.push(bracket);
    }

    /// The name of the next value in an object.
    pub fn name(&mut self, name: &str) {
        self.word(name);
        self.0.push(':');
    }

    /// A string.
    pub fn word(&mut self, word: &str) {
        self.comma();
        self.0.push('"');
        let mut start = 0;
        for (at, byte) in word.bytes().enumerate() {
            let escape = match byte {
                b'"' => "\\\"",
                b'\\' => "\\\\",
                0x8 => "\\b",
                0xc => "\\f",
                b'\n' => "\\n",
                b'\r' => "\\r",
                b'\t' => "\\t",
                0..=0x1f => "",
                _ => continue,
            };
            self.0.push_str(&word[start..at]);
            if escape.is_empty() {
                // Writing into a string cannot fail.
                let _ = write!(self.0, "\\u{byte:04x}");
            } else {
                self.0.push_str(escape);
            }
            start = at + 1;
        }
        self.0.push_str(&word[start..]);
        self.0.push('"');
    }

    /// A whole number.
    pub fn whole(&mut self, number: i64) {
        self.comma();
        let _ = write!(self.0, "{number}");
    }

    /// True or false.
    pub fn flag(&mut self, flag: bool) {
        self.raw(if flag { "true" } else { "false" });
    }

    /// A value that is JSON already.
    pub fn raw(&mut self, json: &str) {
        self.comma();
        self.0.push_str(json);
    }
}
