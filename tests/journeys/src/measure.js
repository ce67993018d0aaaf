// Measures what is on the screen against the sizes promised; returns complaints, each a sentence.
const { job, small, usual } = arguments[0];
const complaints = [];
const page = document.scrollingElement;
const shown = (it) => it.checkVisibility({ visibilityProperty: true, opacityProperty: true });
const scope = document.querySelector("dialog[open]") ?? document;
const all = (what) => [...scope.querySelectorAll(what)].filter(shown);
const told = (it) => it.dataset.testid ?? `${it.tagName.toLowerCase()}.${it.className} "${(it.innerText ?? "").slice(0, 30)}"`;
const font = (it) => parseFloat(getComputedStyle(it).fontSize);
const least = (it, px, what) => {
    if (font(it) < px - 0.01) complaints.push(`${what} has a font of ${font(it)} px, ${px} at least`);
};
const high = (it, px) => {
    const { height } = it.getBoundingClientRect();
    if (height < px - 0.01) complaints.push(`${told(it)} is ${height} px high, ${px} at least`);
};

if (page.scrollWidth > innerWidth) {
    const wide = [...document.body.querySelectorAll("*")].filter((it) => it.getBoundingClientRect().right > innerWidth + 0.5);
    complaints.push(`scrolls sideways: ${page.scrollWidth} px in ${innerWidth}, by ${wide.slice(0, 3).map(told).join(", ")}`);
}

// What can be touched: a checkbox counts with its label, a disclosure with its summary.
for (const it of all("button, a[href], input, select, textarea, summary")) {
    const target = it.matches("input[type=checkbox], input[type=radio], input[type=file]") ? it.closest("label") ?? it : it;
    const { width, height } = target.getBoundingClientRect();
    if (Math.min(width, height) < 47.99) complaints.push(`${told(it)} can be touched on ${width} by ${height} px, 48 at least`);
}

// Text that is cut off by its own box.
for (const it of all("body *")) {
    const style = getComputedStyle(it);
    const own = [...it.childNodes].some((child) => child.nodeType === Node.TEXT_NODE && child.data.trim());
    const clips = style.overflowX !== "visible" || style.overflowY !== "visible";
    if (own && clips && (it.scrollWidth > it.clientWidth + 1 || it.scrollHeight > it.clientHeight + 1) && !it.matches("input, textarea, select"))
        complaints.push(`the text of ${told(it)} is cut off`);
}

const say = all("h1.say")[0];
if (say) {
    // A word stands on one line or it is broken.
    const walker = document.createTreeWalker(say, NodeFilter.SHOW_TEXT);
    for (let text = walker.nextNode(); text; text = walker.nextNode())
        for (const { 0: word, index } of text.data.matchAll(/\S+/g)) {
            const range = document.createRange();
            range.setStart(text, index);
            range.setEnd(text, index + word.length);
            const lines = new Set([...range.getClientRects()].map((box) => Math.round(box.top)));
            if (lines.size > 1 && !word.includes("-")) complaints.push(`the step line breaks "${word}"`);
        }
    if (say.scrollWidth > say.clientWidth) complaints.push("the step line is wider than its place");
}

if (job && usual) {
    if (say) {
        least(say, small ? 42 : 50, "the step line");
        const words = say.innerText.split(/\s+/).filter(Boolean).length;
        if (words > 8) complaints.push(`the step line has ${words} words, 8 at most`);
        if (page.scrollHeight > innerHeight) complaints.push(`a step scrolls: ${page.scrollHeight} px in ${innerHeight}`);
        const answers = all(".answer");
        if (answers.length > 3) complaints.push(`${answers.length} answers, 3 at most with Go on`);
    }
    for (const it of all(".answer")) high(it, small ? 96 : 125);
    for (const it of all(".pan-number")) least(it, 114, "the pan number");
    for (const it of all(".clock-figures")) least(it, 114, "the clock");
    for (const it of all(".stop-word")) least(it, 114, "STOP");
    for (const it of all("button.stop")) {
        high(it, 125);
        const { bottom, width } = it.getBoundingClientRect();
        if (Math.abs(bottom - innerHeight) > 1) complaints.push(`STOP ends at ${bottom} px of ${innerHeight}`);
        if (width < innerWidth - 1) complaints.push(`STOP is ${width} px wide of ${innerWidth}`);
    }
}

if (scope === document)
    for (const id of ["fire", "burn"]) {
        const [it, ...more] = all(`[data-testid="${id}"]`);
        if (!it || more.length) complaints.push(`there are ${it ? 1 + more.length : 0} buttons for ${id}`);
        else high(it, 48);
    }
return complaints;
