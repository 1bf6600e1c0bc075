"""The design note as a reader has it: headless Chromium on the note of a coarse kitchen wall.

Usage: note_in_the_browser.py DEADSHORE JOB.toml SCRATCH
Skips (exit status 77) where Chromium, its driver or Selenium is not installed.
"""

import base64
import json
import pathlib
import re
import shutil
import subprocess
import sys
import unittest

SKIPPED = 77

try:
    from selenium import webdriver
    from selenium.webdriver.chrome.service import Service
    from selenium.webdriver.common.action_chains import ActionChains
    from selenium.webdriver.common.by import By
    from selenium.webdriver.common.keys import Keys
except ImportError:
    webdriver = None

PHONE = 380
DESK = 1200
A4_TEXT_WIDTH = 680  # CSS pixels of 180 mm
A4_TEXT_HEIGHT = 990  # of 297 mm less the margins of 17 and 18 mm

# What is on the page, in one go: each a list of plain words about what is wrong.
OVERFLOWING = """
const wrong = [];
if (document.documentElement.scrollWidth > innerWidth) {
  wrong.push('the page: ' + document.documentElement.scrollWidth + ' > ' + innerWidth);
}
for (const e of document.body.querySelectorAll('*')) {
  if (!e.checkVisibility() || e.closest('svg')) continue;
  const style = getComputedStyle(e);
  const hides = ['hidden', 'clip'].includes(style.overflowX) || style.textOverflow === 'ellipsis';
  if (hides && e.scrollWidth > e.clientWidth + 1) wrong.push('clipped: ' + e.outerHTML.slice(0, 80));
  const box = e.getBoundingClientRect();
  if (box.right > innerWidth + 1 && !e.closest('.scroll')) {
    wrong.push('beyond the edge: ' + e.outerHTML.slice(0, 80));
  }
}
return wrong;
"""

# WCAG 2.1, success criterion 1.4.3: 4.5 to 1, or 3 to 1 for large text (24 px, or 18.7 px bold).
PALE = """
const parts = (colour) => colour.match(/[0-9.]+/g).map(Number);
const light = (colour) => {
  const [r, g, b] = parts(colour).map((v) => {
    v /= 255;
    return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
};
const ground = (e) => {
  for (; e; e = e.parentElement) {
    const colour = getComputedStyle(e).backgroundColor;
    const alpha = parts(colour)[3];
    if (alpha === undefined || alpha === 1) return colour;
  }
  return 'rgb(255, 255, 255)';
};
const wrong = [];
const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
const seen = new Set();
while (walker.nextNode()) {
  const e = walker.currentNode.parentElement;
  if (!walker.currentNode.data.trim() || seen.has(e) || !e.checkVisibility()) continue;
  seen.add(e);
  if (e.disabled || e.closest('script, template, style')) continue;
  const style = getComputedStyle(e);
  const size = parseFloat(style.fontSize);
  const large = size >= 24 || (size >= 18.66 && Number(style.fontWeight) >= 700);
  const inSvg = e.closest('svg') !== null;
  const pair = [light(inSvg ? style.fill : style.color), light(ground(e))].sort((a, b) => b - a);
  const ratio = (pair[0] + 0.05) / (pair[1] + 0.05);
  if (ratio < (large ? 3 : 4.5)) wrong.push(ratio.toFixed(2) + ': ' + e.outerHTML.slice(0, 90));
}
return wrong;
"""

SHOWN = """
const text = (id) => document.getElementById(id).textContent;
const drawn = document.querySelector('#viewer-picture svg [id]');
return {
  words: text('viewer-words'),
  spoken: document.getElementById('viewer-slider').getAttribute('aria-valuetext'),
  picture: drawn ? drawn.id : '',
  loads: Object.fromEntries(Array.from(document.querySelectorAll('#viewer-reactions tbody tr'))
    .map((row) => [row.cells[0].textContent, row.cells[1].textContent])),
  facts: Object.fromEntries(Array.from(document.querySelectorAll('#viewer-facts tbody tr'))
    .map((row) => [row.dataset.fact, row.cells[1].textContent])),
  spots: Object.fromEntries(Array.from(document.querySelectorAll('#viewer .spot'))
    .map((spot) => [spot.dataset.support, spot.querySelector('.spot-load').textContent])),
  hash: location.hash,
};
"""

CHART = """
return {title: document.getElementById('viewer-chart-words').textContent,
        values: Array.from(document.querySelectorAll('#viewer-chart .value'))
          .map((value) => value.textContent)};
"""

NAMED = """
const named = (e) => e.id || (e.closest('tr') ? 'row ' : e.tagName + ' ') +
  (e.dataset.support || e.value || '');
"""

GO = """
const slider = document.getElementById('viewer-slider');
slider.value = arguments[0];
slider.dispatchEvent(new Event('input', {bubbles: true}));
"""

TOO_WIDE_ON_PAPER = """
const main = document.querySelector('main').getBoundingClientRect();
return Array.from(document.querySelectorAll('table, pre, p, ul, ol'))
  .filter((e) => e.checkVisibility())
  .filter((e) => e.getBoundingClientRect().right > main.right + 1 || e.scrollWidth > e.clientWidth + 1)
  .map((e) => e.outerHTML.slice(0, 80));
"""


def loads_of(analysis):
    """What each support carries, as results.json has it, under the viewer's names."""
    loads = {"left pier": analysis["base"]["left"], "right pier": analysis["base"]["right"]}
    loads.update(analysis["needles"])
    if "cut" in analysis["base"]:
        loads["base under the cut"] = analysis["base"]["cut"]
    if "beam" in analysis:
        loads["beam left end"] = analysis["beam"]["reaction_left"]
        loads["beam right end"] = analysis["beam"]["reaction_right"]
    for shore, joists in analysis.get("joists", {}).items():
        loads["joists on " + shore] = joists["force"]
    return loads


class NoteInTheBrowser(unittest.TestCase):
    driver = None
    note = None
    results = None

    @classmethod
    def setUpClass(cls):
        options = webdriver.ChromeOptions()
        for argument in ("--headless=new", "--no-sandbox", "--disable-gpu",
                         "--disable-dev-shm-usage", f"--window-size={DESK},900"):
            options.add_argument(argument)
        options.binary_location = shutil.which("chromium")
        options.set_capability("goog:loggingPrefs", {"browser": "ALL", "performance": "ALL"})
        cls.driver = webdriver.Chrome(service=Service(shutil.which("chromedriver")),
                                      options=options)
        cls.driver.get(cls.note.as_uri())

    @classmethod
    def tearDownClass(cls):
        cls.driver.quit()

    def setUp(self):
        self.look(DESK)
        self.choose("cracked")

    def open(self, fragment=""):
        self.driver.get("about:blank")
        self.driver.get(self.note.as_uri() + fragment)

    def look(self, width, scheme="light", media="screen"):
        self.driver.execute_cdp_cmd("Emulation.setDeviceMetricsOverride", {
            "width": width, "height": 900, "deviceScaleFactor": 1, "mobile": False})
        self.driver.execute_cdp_cmd("Emulation.setEmulatedMedia", {"media": media, "features": [
            {"name": "prefers-color-scheme", "value": scheme}]})

    def shown(self):
        return self.driver.execute_script(SHOWN)

    def go(self, stage):
        self.driver.execute_script(GO, stage)

    def choose(self, model):
        self.driver.execute_script(
            "document.querySelector('#viewer input[value=' + arguments[0] + ']').click()", model)

    def check_stage(self, stage, model):
        shown = self.shown()
        stages = self.results["stages"]
        words = f"Stage {stage + 1} of {len(stages)}: {stages[stage]['name']}, day "
        self.assertTrue(shown["words"].startswith(words), shown["words"])
        self.assertTrue(shown["spoken"].startswith(words), shown["spoken"])
        self.assertIn(model, shown["spoken"])
        self.assertTrue(shown["picture"].startswith(f"view-{stage + 1}-{model}-"), shown["picture"])
        self.assertEqual(shown["hash"], f"#stage-{stage + 1}-{model}")
        return shown

    def test_keys_move_picture_tables_and_words_together(self):
        slider = self.driver.find_element(By.ID, "viewer-slider")
        last = len(self.results["stages"]) - 1
        seen = set()
        for key, stage in ((Keys.HOME, 0), (Keys.ARROW_RIGHT, 1), (Keys.ARROW_RIGHT, 2),
                           (Keys.ARROW_LEFT, 1), (Keys.END, last), (Keys.ARROW_RIGHT, last)):
            slider.send_keys(key)
            seen.add(json.dumps(self.check_stage(stage, "cracked")["loads"], sort_keys=True))
        self.assertEqual(len(seen), 4)

    def test_buttons_step_and_stop_at_the_ends(self):
        self.go(0)
        back = self.driver.find_element(By.ID, "viewer-back")
        on = self.driver.find_element(By.ID, "viewer-on")
        self.assertFalse(back.is_enabled())
        on.click()
        self.check_stage(1, "cracked")
        back.click()
        self.check_stage(0, "cracked")
        self.go(len(self.results["stages"]) - 1)
        self.assertFalse(on.is_enabled())

    def test_every_number_of_every_stage_is_that_of_the_results(self):
        for model in ("uncracked", "cracked"):
            self.choose(model)
            for number, stage in enumerate(self.results["stages"]):
                with self.subTest(stage=stage["name"], model=model):
                    self.go(number)
                    self.check_numbers(self.check_stage(number, model), stage, model)

    def check_numbers(self, shown, stage, model):
        analysis = stage["analyses"][model]
        known = loads_of(analysis)
        there = {name: load for name, load in shown["loads"].items() if load != "\u2013"}
        for name, load in there.items():
            self.assertEqual(load, f"{known[name]:.1f}", name)
        missing = sum(value for name, value in known.items()
                      if name not in there and not name.startswith("beam"))
        self.assertAlmostEqual(missing, 0.0, places=6)
        for name, load in shown["spots"].items():
            self.assertEqual(load, shown["loads"][name], name)
        facts = shown["facts"]
        self.assertEqual(facts["settlement"], f"{analysis['max_settlement']:.2f} mm")
        self.assertEqual(facts["compression"], f"{analysis['max_compression']:.2f} N/mm\u00b2")
        self.assertEqual(facts["damage"], analysis["damage"]["in_words"])
        factor = stage["safety"]["factor"]
        self.assertEqual(facts["factor"], "over 100" if factor > 100 else f"{factor:.2f}")
        self.check_worst(facts["check"], stage["name"])
        if model == "cracked":
            self.check_cracks_and_loose(facts, analysis)

    def check_worst(self, words, stage):
        made = [check for check in self.results["checks"]
                if check["stage"] == stage and "not_verified" not in check]
        if not made:
            self.assertEqual(words, "every check is worse in another stage")
            return
        worst = max(made, key=lambda check: check["utilisation"])
        self.assertTrue(words.startswith(f"{worst['utilisation']:.2f}"), words)

    def check_cracks_and_loose(self, facts, analysis):
        cracks = analysis["cracks"]
        self.assertEqual(facts["crack"],
                         f"{cracks[0]['width']:.2f} mm, {cracks[0]['where']}" if cracks
                         else "none wider than a hair")
        loose = sum(patch["weight"] for patch in analysis["loose"])
        self.assertEqual(facts["loose"] == "none", loose == 0.0)

    def test_pointing_at_a_needle_shows_it_through_the_stages(self):
        self.go(5)
        for name in self.results["hand"]["needles"]:
            spot = self.driver.find_element(By.CSS_SELECTOR, f".spot[data-support='{name}']")
            self.driver.execute_script("arguments[0].scrollIntoView({block: 'center'})", spot)
            ActionChains(self.driver).move_to_element(spot).perform()
            self.check_series(name)

    def test_focus_on_a_row_shows_it_through_the_stages(self):
        for row in self.driver.find_elements(By.CSS_SELECTOR, "#viewer-reactions tbody button"):
            self.driver.execute_script("arguments[0].focus()", row)
            self.check_series(row.text)

    def check_series(self, name):
        chart = self.driver.execute_script(CHART)
        self.assertEqual(chart["title"], f"{name} through the stages, kN, cracked masonry")
        self.assertEqual(len(chart["values"]), len(self.results["stages"]))
        for value, stage in zip(chart["values"], self.results["stages"]):
            if value != "\u2013":
                load = loads_of(stage["analyses"]["cracked"])[name]
                self.assertEqual(value, f"{load:.1f}", stage["name"])
        self.assertTrue(any(value != "\u2013" for value in chart["values"]))

    def test_the_address_remembers_the_stage(self):
        self.addCleanup(self.open)
        self.go(4)
        self.choose("uncracked")
        address = self.shown()["hash"]
        self.open(address)
        self.check_stage(4, "uncracked")
        self.open("#stage-99-cracked")
        self.assertNotIn("Stage 99", self.shown()["words"])

    def test_keyboard_reaches_every_control(self):
        self.go(4)
        due = set(self.driver.execute_script(
            NAMED + "return Array.from(document.querySelectorAll('#viewer button, #viewer input'))"
            ".filter((e) => e.type !== 'radio' || e.checked).map(named)"))
        reached = set()
        self.driver.execute_script("document.querySelector('#summary a').focus()")
        for _ in range(80):
            ActionChains(self.driver).send_keys(Keys.TAB).perform()
            name, ring = self.driver.execute_script(
                NAMED + "const e = document.activeElement; const s = getComputedStyle(e);"
                "return [named(e), s.outlineStyle !== 'none' && parseFloat(s.outlineWidth) >= 2]")
            if name in due:
                self.assertTrue(ring, f"no ring of focus on {name}")
                reached.add(name)
        self.assertEqual(reached, due)

    def test_arrow_keys_change_the_masonry(self):
        self.go(4)
        chosen = self.driver.find_element(By.CSS_SELECTOR, "#viewer input[value=cracked]")
        chosen.send_keys(Keys.ARROW_LEFT)
        self.check_stage(4, "uncracked")

    def test_nothing_overflows_or_is_pale(self):
        for width in (PHONE, DESK):
            for scheme in ("light", "dark"):
                with self.subTest(width=width, scheme=scheme):
                    self.look(width, scheme)
                    self.assertEqual(self.driver.execute_script(OVERFLOWING), [])
                    self.assertEqual(self.driver.execute_script(PALE), [])

    def test_dark_is_dark_and_figures_stay_on_white(self):
        self.look(DESK, "dark")
        ground, paper = self.driver.execute_script(
            "return [getComputedStyle(document.body).backgroundColor,"
            "getComputedStyle(document.querySelector('figure .scroll')).backgroundColor]")
        self.assertLess(sum(map(int, re.findall(r"\d+", ground)[:3])), 150)
        self.assertEqual(paper, "rgb(255, 255, 255)")

    def test_nothing_moves_by_itself(self):
        self.go(2)
        self.assertEqual(self.driver.execute_script(
            "return [document.getAnimations().length,"
            "getComputedStyle(document.documentElement).scrollBehavior]"), [0, "auto"])

    def test_paper_is_light_and_holds_every_table(self):
        self.look(A4_TEXT_WIDTH, "dark", "print")
        self.assertEqual(self.driver.execute_script(TOO_WIDE_ON_PAPER), [])
        viewer, ground, summary = self.driver.execute_script(
            "return [document.getElementById('viewer').checkVisibility(),"
            "getComputedStyle(document.body).backgroundColor,"
            "document.getElementById('summary').offsetHeight]")
        self.assertFalse(viewer)
        self.assertEqual(ground, "rgb(255, 255, 255)")
        self.assertLessEqual(summary, A4_TEXT_HEIGHT)
        printed = self.driver.execute_cdp_cmd("Page.printToPDF", {"preferCSSPageSize": True,
                                                                  "printBackground": True})
        pages = len(re.findall(rb"/Type\s*/Page\b", base64.b64decode(printed["data"])))
        print(f"{pages} pages on A4", file=sys.stderr)
        self.assertGreater(pages, 10)
        self.assertLess(pages, 80)

    def test_without_script_the_note_is_complete_and_shows_no_viewer(self):
        self.addCleanup(self.open)
        self.driver.execute_cdp_cmd("Emulation.setScriptExecutionDisabled", {"value": True})
        try:
            self.open()
            page = self.driver.page_source
        finally:
            self.driver.execute_cdp_cmd("Emulation.setScriptExecutionDisabled", {"value": False})
        self.assertRegex(page, r'<div id="viewer"[^>]*hidden')
        self.assertIn('id="cautions"', page)

    def test_nothing_is_loaded_and_nothing_complains(self):
        self.go(3)
        self.choose("uncracked")
        complaints = [entry["message"] for entry in self.driver.get_log("browser")]
        self.assertEqual(complaints, [])
        asked = set()
        for entry in self.driver.get_log("performance"):
            message = json.loads(entry["message"])["message"]
            if message["method"] == "Network.requestWillBeSent":
                asked.add(message["params"]["request"]["url"].split("#")[0])
        self.assertLessEqual(asked, {self.note.as_uri(), "about:blank"})


def run_job(program, job, scratch):
    """A coarse mesh is enough: what is looked at is the page."""
    scratch.mkdir(parents=True, exist_ok=True)
    coarse = scratch / "coarse.toml"
    text = re.sub(r'(?m)^mesh\s*=.*$', 'mesh = "300 mm"', job.read_text(encoding="utf-8"))
    coarse.write_text(text, encoding="utf-8")
    subprocess.run([program, "run", str(coarse), "-o", str(scratch / "out")], check=True,
                   stdout=subprocess.DEVNULL)
    return scratch / "out"


def main():
    if webdriver is None or not all(map(shutil.which, ("chromium", "chromedriver"))):
        print("skipped: chromium, chromedriver or selenium for Python is not installed")
        return SKIPPED
    program, job, scratch = sys.argv[1], pathlib.Path(sys.argv[2]), pathlib.Path(sys.argv[3])
    out = run_job(program, job, scratch)
    NoteInTheBrowser.note = out / "note.html"
    NoteInTheBrowser.results = json.loads((out / "results.json").read_text(encoding="utf-8"))
    suite = unittest.defaultTestLoader.loadTestsFromTestCase(NoteInTheBrowser)
    return 0 if unittest.TextTestRunner(verbosity=2).run(suite).wasSuccessful() else 1


if __name__ == "__main__":
    sys.exit(main())
