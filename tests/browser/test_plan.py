"""The reader's plan: one set of numbers on every page, listed, changed, undone, saved, loaded, and never overwritten."""

from __future__ import annotations

import contextlib
import json
import re
from collections.abc import Callable, Iterator, Mapping
from contextlib import AbstractContextManager
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Locator, Page, expect

import server
from calc.answer import Typed, answer
from calc.engine import offering, plan, plan_file
from calc.engine.plan import Entry
from calc.vocabulary import BY_KEY
from calc.worksheets import WORKSHEETS
from tests.browser.conftest import Visiting
from tests.browser.reader import SIZES, Reader, plain
from tests.browser.test_reach import assert_accessible

pytestmark = pytest.mark.browser

NAME = "stoke-and-store.plan"
MARKUP = '<img src=x onerror="window.harmed = true">'

Planned = Callable[..., AbstractContextManager["PlanPage"]]


class PlanPage:
    """The page "Your plan", as a reader uses it."""

    def __init__(self, page: Page) -> None:
        self.page = page
        self.section = page.locator(".ss-plan")

    def wait(self) -> None:
        """Until the list stands for what the plan holds."""
        expect(self.section).to_have_attribute("data-state", "ready")
        expect(self.page.locator(".ss-plan[data-busy]")).to_have_count(0)

    def row(self, key: str) -> Locator:
        return self.section.locator(f"[data-key={key}]")

    def box(self, key: str) -> Locator:
        return self.row(key).locator(".ss-row").locator("input, select")

    def note(self, key: str) -> str:
        return plain(self.row(key).locator(".ss-note").inner_text())

    def listed(self) -> list[str]:
        return list(self.section.locator("[data-key]").evaluate_all("rows => rows.map((row) => row.dataset.key)"))

    def change(self, key: str, text: str) -> None:
        box = self.box(key)
        if box.evaluate("box => box.tagName") == "SELECT":
            box.select_option(text)
        else:
            box.fill(text)
            box.press("Enter")
        self.wait()

    def press(self, name: str) -> None:
        self.section.get_by_role("button", name=name, exact=True).click()
        self.wait()

    @property
    def said(self) -> str:
        return plain(self.section.locator("[data-slot=said]").inner_text())

    def load(self, content: bytes, name: str = "plan.txt") -> str:
        """Load a file and return what is said about it."""
        self.section.locator("[data-slot=said]").evaluate("place => place.replaceChildren()")
        self.section.locator("input[type=file]").set_input_files(
            {"name": name, "mimeType": "text/plain", "buffer": content}
        )
        expect(self.section.locator("[data-slot=said]")).not_to_be_empty()
        self.wait()
        return self.said

    def save(self) -> str:
        """Save the plan and return the file's text."""
        with self.page.expect_download() as download:
            self.press("Save to a file")
        assert download.value.suggested_filename == "stoke-and-store-plan.txt"
        return Path(download.value.path()).read_text(encoding="utf-8")


def stored(page: Page) -> dict[str, Any]:
    """What the browser keeps."""
    return dict(json.loads(page.evaluate(f"localStorage.getItem('{NAME}') ?? '{{}}'")))


def keep(page: Page, entries: Mapping[str, Mapping[str, str]]) -> None:
    """Make the browser keep a plan before the page's first script."""
    text = json.dumps(json.dumps(entries))
    page.add_init_script(f"localStorage.getItem('{NAME}') ?? localStorage.setItem('{NAME}', {text});")


@pytest.fixture(scope="session")
def planned(visiting: Visiting, served: server.Site) -> Planned:
    """Opens the page "Your plan" of a visitor whose browser holds these entries."""

    @contextlib.contextmanager
    def open_plan(
        entries: Mapping[str, Mapping[str, str]] | None = None, troubles: list[str] | None = None, **kind: Any
    ) -> Iterator[PlanPage]:
        with visiting([] if troubles is None else troubles, **kind) as page:
            keep(page, entries or {})
            page.goto(f"{served.url}plan/")
            result = PlanPage(page)
            result.wait()
            yield result

    return open_plan


def at_worksheet(page: Page, served: server.Site, places: dict[str, str], worksheet: str, hash_: str = "") -> Reader:
    page.goto(served.url + places[worksheet] + hash_)
    reader = Reader(page, worksheet)
    reader.wait_until_live()
    return reader


TYPED = {
    "indoor": {"text": "68", "units": "us", "from": "typed"},
    "method": {"text": "quick", "units": "us", "from": "typed"},
    "heated_area": {"text": "1,800", "units": "us", "from": "link"},
    "store_top": {"text": "", "units": "us", "from": "typical"},
    "design_load": {"text": "20000 Btu/h", "units": "us", "from": "computed", "by": "house-load"},
    "lowest_useful": {"text": "128.1 F", "units": "us", "from": "example", "by": "emitter-temperature"},
}


def test_one_press_brings_the_whole_plan_up_to_date(planned: Planned) -> None:
    emitters = {
        "emitter_length": {"text": "120", "units": "us", "from": "typed"},
        "lowest_useful": {"text": "128.1 F", "units": "us", "from": "computed", "by": "emitter-temperature"},
    }
    with planned(TYPED | emitters) as plan_page:
        before = stored(plan_page.page)
        everything = plan_page.page.get_by_role("button", name="Take all the new numbers")
        everything.click()
        plan_page.wait()
        expect(everything).to_have_count(0)
        expect(plan_page.page.locator(".ss-late")).to_have_count(0)
        after = stored(plan_page.page)
        assert {key for key in after if after[key] != before[key]} == {"design_load", "lowest_useful"}
        # It is one change: one press takes it back.
        plan_page.press("Undo")
        assert stored(plan_page.page) == before


def test_each_value_says_where_it_came_from_and_is_shown_in_the_reader_s_units(planned: Planned) -> None:
    with planned(TYPED) as plan_page:
        assert set(plan_page.listed()) == set(TYPED)
        assert plan_page.note("indoor") == "Typed by you."
        assert plan_page.note("heated_area") == "Came with a link."
        assert plan_page.note("store_top").startswith(
            "A usual value, since you said that you do not know: Common practice"
        )
        assert plan_page.note("design_load") == "Worked out by How much heat does my house lose on the coldest day?"
        assert plan_page.note("lowest_useful").startswith("Rests on the worked example of How cool can my baseboards")
        expect(plan_page.box("store_top")).to_have_value("180")
        expect(plan_page.box("method")).to_have_value("quick")
        link = plan_page.row("design_load").locator(".ss-note a")
        assert link.get_attribute("href") == "../guides/house/#house-load"
        # Out of date: 1,800 ft² of this kind of house lose something else, and one press takes that.
        entries = {key: Entry(entry["text"], entry["from"], entry.get("by", "")) for key, entry in TYPED.items()}
        now = offering.stale(entries, WORKSHEETS, BY_KEY)["design_load"]
        late = plan_page.row("design_load").locator(".ss-caution")
        expect(late).to_contain_text("Caution: Out of date.")
        late.get_by_role("button").click()
        plan_page.wait()
        expect(late).to_have_count(0)
        assert stored(plan_page.page)["design_load"] == {
            "text": now,
            "units": "us",
            "from": "computed",
            "by": "house-load",
        }
        # In SI units the same values; what was typed is not lost on the way back.
        plan_page.page.locator("[data-ss-units=si]").click()
        plan_page.wait()
        expect(plan_page.box("indoor")).to_have_value("20")
        plan_page.page.locator("[data-ss-units=us]").click()
        plan_page.wait()
        expect(plan_page.box("indoor")).to_have_value("68")
        assert stored(plan_page.page)["indoor"] == TYPED["indoor"]


def test_a_plan_with_numbers_is_never_called_empty(visiting: Visiting, served: server.Site) -> None:
    """Neither before Python has listed them, nor where no worksheet of this release asks for them."""
    with visiting([]) as page:
        keep(page, {"bucket_size": {"text": "3", "units": "us", "unit": "gal"}})
        held: list[Any] = []
        page.context.route("**/pyodide.asm.wasm*", lambda route: held.append(route))
        page.goto(f"{served.url}plan/")
        plan_page = PlanPage(page)
        expect(plan_page.section.locator("[data-slot=plan]")).to_contain_text("Your plan holds numbers.")
        page.wait_for_timeout(200)
        for route in held:
            route.continue_()
        plan_page.wait()
        expect(plan_page.section.locator("[data-slot=plan]")).to_contain_text("1 number.")
        expect(plan_page.row("bucket_size")).to_contain_text("bucket size: 3 gal")
        expect(plan_page.section).not_to_contain_text("Nothing yet")
        plan_page.row("bucket_size").get_by_role("button").click()
        plan_page.wait()
        expect(plan_page.section).to_contain_text("Nothing yet")


def test_values_are_changed_cleared_and_undone_in_place(
    planned: Planned, served: server.Site, places: dict[str, str]
) -> None:
    with planned(TYPED) as plan_page:
        plan_page.change("design_load", "21,500")
        assert plan_page.note("design_load") == "Typed by you."
        expect(plan_page.row("design_load").locator(".ss-caution")).to_have_count(0)
        plan_page.change("method", "fuel")
        assert "Not used with the choices made now." not in plan_page.note("indoor")
        # A mistake keeps what was typed and says what to type instead.
        plan_page.change("indoor", MARKUP)
        expect(plan_page.box("indoor")).to_have_value(MARKUP)
        expect(plan_page.box("indoor")).to_have_attribute("aria-invalid", "true")
        expect(plan_page.row("indoor").locator(".ss-error")).to_contain_text("must start with a number, like")
        plan_page.press("Undo")
        expect(plan_page.box("indoor")).to_have_value("68")
        plan_page.press("Clear Heated floor area")
        assert "heated_area" not in plan_page.listed()
        expect(plan_page.page.locator(":focus")).to_have_attribute("id", re.compile("^plan-"))
        plan_page.change("store_top", "")
        assert "store_top" not in plan_page.listed()
        before = stored(plan_page.page)
        plan_page.press("Clear everything")
        assert plan_page.listed() == []
        assert stored(plan_page.page) == {}
        assert plan_page.said == "Your plan is empty. Undo brings it back."
        # Undo reaches back over a change of page, one change after the other.
        plan_page.page.reload()
        plan_page.wait()
        plan_page.press("Undo")
        assert stored(plan_page.page) == before
        for _ in range(4):
            plan_page.press("Undo")
        assert stored(plan_page.page) == TYPED
        expect(plan_page.section.get_by_role("button", name="Undo")).to_be_disabled()
        assert plan_page.page.evaluate("window.harmed") is None
        # What was changed here holds in the worksheets.
        plan_page.change("lowest_useful", "115")
        reader = at_worksheet(plan_page.page, served, places, "stored-heat")
        expect(reader.box("lowest_useful")).to_have_value("115")
        expect(reader.box("design_load")).to_have_value("20,000")
        expect(reader.field("design_load").locator(".ss-note")).to_contain_text("Caution: Out of date.")


WHOLE = {
    "indoor": Entry("68 F", "typed"),
    "store_volume": Entry("500 gal", "typed"),
    "store_top": Entry("180 F", "typical"),
    "lowest_useful": Entry("130 F", "link"),
    "design_load": Entry("30500 Btu/h", "computed", "house-load"),
}
FILE = plan_file.write(WHOLE)
BAD_FILES = {
    "from another program": (b"[settings]\nvolume = 500\n", "does not begin with"),
    "of 5 MB": (b"x" * 5_000_000, "far too large"),
    "of 5 MB that begins well": (FILE.encode() + b"#" * 5_000_000, "far too large"),
    "in another encoding": (FILE.encode("utf-16"), "not plain text in UTF-8"),
    "a picture": (b"\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR", "not plain text in UTF-8"),
    "with a thousand keys": (
        ("Stoke and Store plan 1\n" + "\n".join(f"key{n} = {n} | typed" for n in range(1000)) + "\nend\n").encode(),
        "far more values",
    ),
    "of markup": (f"<html>{MARKUP}</html>".encode(), "does not begin with"),
    "of JSON": (b'{"plan": [1, 2]}', "JSON of another form"),
    "with nothing in it": (b"", "does not begin with"),
}


@pytest.mark.parametrize("size", SIZES)
def test_who_gave_a_number_is_told_beside_it_and_stays_with_it(
    planned: Planned, served: server.Site, size: str
) -> None:
    """Chosen with the keyboard; it outlives a reload, can be undone, and travels in the record's link."""
    numbers = {
        "design_load": {"text": "30500", "units": "us", "unit": "Btu/h"},
        "store_volume": {"text": "500", "units": "us", "unit": "gal"},
        "store_top": {"text": "180", "units": "us", "unit": "F"},
        "lowest_useful": {"text": "130", "units": "us", "unit": "F", "from": "link"},
        "indoor": {"text": "68 F", "units": "us", "from": "computed", "by": "house-load"},
        "method": {"text": "fuel", "units": "us"},
    }
    with planned(numbers, viewport=SIZES[size]) as mine:
        assert mine.section.locator("[data-ss-giver]").count() == 4, "only for numbers that somebody gave"
        giver = mine.page.get_by_label("Where from: Design load")
        giver.focus()
        mine.page.keyboard.press("m")
        mine.page.keyboard.press("Tab")
        mine.wait()
        expect(giver).to_have_value("measured")
        assert stored(mine.page)["design_load"] == numbers["design_load"] | {"giver": "measured"}
        mine.page.reload()
        mine.wait()
        expect(giver).to_have_value("measured")
        giver.select_option(label="from the bill")
        mine.wait()
        mine.page.get_by_role("button", name="Undo").click()
        mine.wait()
        expect(giver).to_have_value("measured")
        mine.change("store_volume", "600")
        assert stored(mine.page)["design_load"]["giver"] == "measured"
        mine.page.goto(f"{served.url}record/")
        mine.page.locator("[data-ss-record][data-mine]:not([data-busy])").wait_for()
        row = mine.page.locator(".ss-r-choices tr", has_text="Design load")
        expect(row).to_contain_text("Measured")


def test_saved_to_a_file_and_loaded_again_and_no_bad_file_does_harm(planned: Planned) -> None:
    kept = {
        "indoor": {"text": "70", "units": "us", "from": "typed"},
        "store_volume": {"text": "1 900", "units": "si", "from": "typed"},
    }
    with planned(kept, accept_downloads=True) as plan_page:
        saved = plan_page.save()
        assert saved == "Stoke and Store plan 1\nindoor = 70 F | typed\nstore_volume = 1900 L | typed\nend\n"
        assert plan_page.said == "Saved: 2 numbers, in a text file that you can read."
        for name, (content, word) in BAD_FILES.items():
            said = plan_page.load(content)
            assert word in said, name
            assert said.startswith("Nothing was loaded, and your plan is as it was."), name
            assert plan_page.section.locator("[data-slot=said] li").count() == 1, name
            assert stored(plan_page.page) == kept, name
        # A whole one takes the plan's place, and says so.
        assert plan_page.load(FILE.encode()) == "Loaded: 5 numbers, in place of what was here. Undo brings that back."
        assert set(plan_page.listed()) == set(WHOLE)
        assert plan_page.save() == plan_file.write({key: WHOLE[key] for key in plan_page_order(WHOLE)})
        plan_page.press("Undo")
        assert stored(plan_page.page) == kept
        # One that was cut, and one with markup in it: what is whole is used, the rest is named.
        cut = FILE.removesuffix("end\n").replace("500 gal", f"{MARKUP}")
        said = plan_page.load(cut.encode())
        assert "was cut off" in said
        assert "Store volume in this plan must start with a number; it was left out." in said
        assert "store_volume" not in plan_page.listed()
        assert plan_page.section.locator("img").count() == 0
        assert plan_page.page.evaluate("window.harmed") is None
        # JSON from the command line.
        printed = json.dumps({"plan": {"store_volume": {"text": "640 gal", "from": "typed"}}, "worksheets": {}})
        assert plan_page.load(printed.encode(), "plan.json").startswith("Loaded: 1 number")
        expect(plan_page.box("store_volume")).to_have_value("640")


def plan_page_order(entries: Mapping[str, Entry]) -> list[str]:
    """The keys in the order in which the worksheets ask for them."""
    return list(plan.look(entries, WORKSHEETS.values()))


UNDO = "stoke-and-store.undo"


@pytest.mark.parametrize("damaged", ["[{", "null", "5", '[null, 7, {"indoor": 5}]', '{"a": 1}'])
def test_a_damaged_list_of_changes_is_left_alone(planned: Planned, damaged: str) -> None:
    with planned(TYPED) as plan_page:
        plan_page.page.evaluate("([name, text]) => sessionStorage.setItem(name, text)", [UNDO, damaged])
        plan_page.page.reload()
        plan_page.wait()
        undo = plan_page.section.get_by_role("button", name="Undo")
        while undo.is_enabled():
            undo.click()
        plan_page.wait()
        plan_page.change("lowest_useful", "115")
        plan_page.press("Undo")
        expect(plan_page.box("lowest_useful")).to_have_value("128.1")


def test_a_number_beyond_all_use_leaves_the_page_alive(planned: Planned) -> None:
    with planned({"store_top": {"text": "1e308", "units": "si"}, "indoor": {"text": "68", "units": "us"}}) as plan_page:
        expect(plan_page.box("store_top")).to_have_value("1e308")
        expect(plan_page.row("store_top").locator(".ss-error")).to_contain_text("is too large a number")
        for system in ("si", "us"):
            plan_page.page.locator(f"[data-ss-units={system}]").click()
            plan_page.wait()
            expect(plan_page.box("store_top")).to_have_value("1e308")
        plan_page.change("store_top", "180")
        expect(plan_page.row("store_top").locator(".ss-error")).to_have_count(0)


def test_a_reply_that_was_refused_can_be_asked_for_again(planned: Planned) -> None:
    troubles: list[str] = []
    with planned(TYPED, troubles) as plan_page:
        plan_page.page.evaluate(
            """() => {
              const plain = JSON.stringify;
              JSON.stringify = (value, ...rest) => {
                if (!value.ask) return plain(value, ...rest);
                JSON.stringify = plain;
                return plain({ ...value, ask: "nothing" }, ...rest);
              };
            }"""
        )
        plan_page.box("indoor").fill("69")
        plan_page.box("indoor").press("Enter")
        status = plan_page.section.locator("[data-slot=status]")
        expect(status).to_have_text("The calculator stopped. Your numbers are kept.")
        plan_page.press("Try again")
        expect(status).to_have_text("Ready. Change any number here; it changes on every page.")
        expect(plan_page.box("indoor")).to_have_value("69")
        assert "UnknownRequest" in "".join(troubles)
        troubles.clear()


def test_what_is_half_typed_when_the_units_change_is_meant_in_the_old_ones(planned: Planned) -> None:
    with planned({"store_volume": {"text": "500", "units": "us"}}) as plan_page:
        plan_page.page.evaluate(
            """() => {
              document.querySelector("[data-ss-units=si]").click();
              const box = document.querySelector("#plan-store_volume");
              box.focus();
              box.value = "650";
            }"""
        )
        expect(plan_page.row("store_volume").locator(".ss-unit")).to_have_text("liters")
        plan_page.wait()
        expect(plan_page.box("store_volume")).to_have_value("2461")
        assert stored(plan_page.page)["store_volume"] == {"text": "650", "units": "us", "unit": "gal"}


def test_two_tabs_agree(visiting: Visiting, served: server.Site, places: dict[str, str]) -> None:
    with visiting([]) as page:
        first = at_worksheet(page, served, places, "stored-heat")
        other = page.context.new_page()
        other.goto(f"{served.url}plan/")
        plan_page = PlanPage(other)
        plan_page.wait()
        first.type("store_volume", "640")
        expect(plan_page.box("store_volume")).to_have_value("640")
        plan_page.change("store_volume", "320")
        expect(first.box("store_volume")).to_have_value("320")
        first.wait()
        sheet = answer("stored-heat", {"store_volume": Typed("320")})
        assert first.results() == {result.key: plain(result.shown) for result in sheet.results}
        plan_page.press("Clear everything")
        expect(first.slot("whose")).to_contain_text("Worked example")


# ---- results that are inputs elsewhere ---------------------------------------------------------------------------


def test_a_result_goes_into_the_plan_and_goes_out_of_date(
    visiting: Visiting, served: server.Site, places: dict[str, str]
) -> None:
    with visiting([]) as page:
        house = at_worksheet(page, served, places, "house-load")
        house.type("method", "quick")
        house.type("heated_area", "1800")
        house.type("design_outdoor", "-5")
        use = house.sheet.locator("[data-ss-use=design_load]")
        expect(use).to_have_text("Use in my plan: Design load (heat lost on the coldest day)")
        use.click()
        expect(house.slot("used")).to_contain_text("In your plan: Design load (heat lost on the coldest day),")
        expect(use).to_contain_text("In your plan")
        taken = stored(page)["design_load"]
        assert (taken["from"], taken["by"]) == ("computed", "house-load")
        # Its own inputs change: it is out of date here and wherever it is used.
        house.type("heated_area", "2400")
        expect(use).to_contain_text("Update my plan")
        store = at_worksheet(page, served, places, "stored-heat")
        note = store.field("design_load").locator(".ss-note")
        expect(note).to_contain_text("Worked out by “How much heat does my house lose on the coldest day?”")
        expect(note).to_contain_text("Caution: Out of date. The numbers behind it have changed; it would now be")
        expect(store.field("design_load")).to_have_attribute("data-from", "computed")
        # One press takes it anew where it is used, and the reader is not left in the void.
        before = stored(page)["design_load"]["text"]
        late = store.slot("late")
        expect(late).to_contain_text("Out of date: Design load (heat lost on the coldest day).")
        late.get_by_role("button", name="Take the new number").click()
        store.wait()
        expect(late).to_be_empty()
        expect(store.slot("status")).to_be_focused()
        assert stored(page)["design_load"]["text"] != before
        expect(note).not_to_contain_text("Out of date")
        # What is typed over it is the reader's own, and stands against the worksheet.
        store.type("design_load", "21,000")
        expect(store.field("design_load")).to_have_attribute("data-from", "typed")
        assert stored(page)["design_load"] == {"text": "21,000", "units": "us", "unit": "Btu/h"}
        house = at_worksheet(page, served, places, "house-load")
        house.sheet.locator("[data-ss-use=design_load]").click()
        expect(house.slot("used")).to_contain_text(
            "Not changed. Design load (heat lost on the coldest day) is 21,000 Btu/h in your plan, typed by you."
        )
        assert stored(page)["design_load"]["text"] == "21,000"
        house.slot("used").get_by_role("button").click()
        house.wait()
        assert stored(page)["design_load"]["from"] == "computed"
        # Undo, right after it was taken.
        house.sheet.locator("[data-ss-use=yearly_heat]").click()
        house.slot("used").get_by_role("button", name="Undo").click()
        house.wait()
        assert "yearly_heat" not in stored(page)


def test_of_several_needs_the_plan_keeps_the_highest(
    visiting: Visiting, served: server.Site, places: dict[str, str]
) -> None:
    with visiting([]) as page:
        keep(
            page,
            {
                "design_load": {"text": "30,500", "units": "us", "from": "typed"},
                "baseboard_length": {"text": "160", "units": "us", "from": "typed"},
                "lowest_useful": {"text": "175 F", "units": "us", "from": "computed", "by": "air-coil"},
            },
        )
        reader = at_worksheet(page, served, places, "emitter-temperature")
        typed = {"design_load": "30,500", "baseboard_length": "160"}
        entries = {key: Entry(text, "typed") for key, text in typed.items()}
        entries["lowest_useful"] = Entry("175 F", "computed", "air-coil")
        sheet = answer("emitter-temperature", {key: Typed(text) for key, text in typed.items()})
        offer = offering.offer("lowest_useful", sheet, entries, WORKSHEETS, BY_KEY)
        assert offer
        assert offer.why == "higher"
        assert offer.standing
        reader.sheet.locator("[data-ss-use=lowest_useful]").click()
        expect(reader.slot("used")).to_contain_text("One store serves them all, so the plan keeps the highest.")
        assert stored(page)["lowest_useful"]["text"] == "175 F"
        reader.slot("used").get_by_role("button", name=re.compile("all the same")).click()
        reader.wait()
        assert stored(page)["lowest_useful"] == {
            "text": offer.choices[-1].text,
            "units": "us",
            "from": "computed",
            "by": "emitter-temperature",
        }


def test_a_result_of_the_worked_example_is_marked_as_such(
    visiting: Visiting, served: server.Site, places: dict[str, str]
) -> None:
    with visiting([]) as page:
        house = at_worksheet(page, served, places, "house-load")
        house.sheet.locator("[data-ss-use=design_load]").click()
        expect(house.slot("used")).to_contain_text("of the worked example, not of your own numbers")
        assert stored(page)["design_load"]["from"] == "example"


# ---- links -------------------------------------------------------------------------------------------------------

LINK = "#v1;stored-heat;store_volume=640gal;store_top=175F~;lowest_useful=100F;design_load=20000Btu/h;end"


def test_a_link_never_overwrites_the_reader_s_own_numbers_unasked(
    visiting: Visiting, served: server.Site, places: dict[str, str]
) -> None:
    own = {
        "store_volume": {"text": "500", "units": "us", "from": "typed"},
        "lowest_useful": {"text": "120", "units": "us", "from": "typed"},
    }
    with visiting([]) as page:
        keep(page, own)
        reader = at_worksheet(page, served, places, "stored-heat", LINK)
        told = reader.slot("link")
        expect(told).to_contain_text("These numbers came with the link")
        expect(told).to_contain_text("Store volume: yours 500 gal, the link's 640 gal")
        expect(told).to_contain_text("Lowest useful store temperature: yours 120 °F, the link's 100 °F")
        expect(told).to_be_focused()
        linked = {"store_volume": "640gal", "store_top": "175F~", "lowest_useful": "100F", "design_load": "20000Btu/h"}
        theirs = answer(
            "stored-heat",
            {key: Typed(text.rstrip("~"), "us", "typical" if "~" in text else "link") for key, text in linked.items()},
        )
        mine = answer("stored-heat", {key: Typed(entry["text"]) for key, entry in own.items()})
        shown = lambda sheet: {result.key: plain(result.shown) for result in sheet.results}  # noqa: E731
        reader.wait()
        assert reader.results() == shown(theirs)
        assert stored(page) == own
        # Looking: numbers may be changed, and nothing of it is kept, not even over a reload.
        told.get_by_role("button", name="Look at the link's").click()
        expect(told).to_contain_text("You are looking at a link's numbers")
        reader.type("store_volume", "800")
        assert stored(page) == own
        expect(reader.sheet.get_by_role("button", name="Clear my numbers")).to_be_hidden()
        told.get_by_role("button", name="Back to mine").click()
        reader.wait()
        assert reader.results() == shown(mine)
        expect(reader.box("store_volume")).to_have_value("500")
        # Undecided, the page asks again; decided, it does not.
        page.evaluate("hash => { location.hash = hash; }", LINK.replace("640", "641"))
        expect(told).to_contain_text("the link's 641 gal")
        page.reload()
        reader.wait_until_live()
        expect(told).to_contain_text("the link's 641 gal")
        told.get_by_role("button", name="Keep mine").click()
        reader.wait()
        assert reader.results() == shown(mine)
        page.reload()
        reader.wait_until_live()
        expect(told).to_be_hidden()
        assert reader.results() == shown(mine)
        # Using them puts them into the plan, and that can be undone.
        page.evaluate("hash => { location.hash = hash; }", LINK)
        told.get_by_role("button", name="Use the link's").click()
        reader.wait()
        assert reader.results() == shown(theirs)
        assert stored(page)["store_volume"] == {"text": "640gal", "units": "us", "from": "link"}
        reader.sheet.get_by_role("button", name="Put my numbers back").click()
        reader.wait()
        assert reader.results() == shown(mine)
        assert stored(page) == own


def test_a_link_that_says_what_the_plan_says_asks_nothing(
    visiting: Visiting, served: server.Site, places: dict[str, str]
) -> None:
    with visiting([]) as page:
        keep(page, {"store_volume": {"text": "640.0 gal", "units": "us", "from": "typed"}})
        reader = at_worksheet(page, served, places, "stored-heat", LINK)
        expect(reader.slot("whose")).to_have_text("Numbers that came with a link")
        expect(reader.slot("link")).to_be_hidden()
        # Another link in place of one that nobody touched: told, not asked, and it can be undone.
        page.evaluate("hash => { location.hash = hash; }", LINK.replace("640", "650"))
        expect(reader.slot("link")).to_contain_text("in place of those that came with another link")
        expect(reader.box("store_volume")).to_have_value("650")
        # A link without numbers takes none away.
        page.evaluate("hash => { location.hash = hash; }", "#v1;stored-heat;end")
        expect(reader.slot("link")).to_contain_text("This link holds no numbers.")
        expect(reader.box("store_volume")).to_have_value("650")


# ---- storage that is refused or full -----------------------------------------------------------------------------

REFUSED = (
    """Object.defineProperty(window, "localStorage", { get() { throw new DOMException("no", "SecurityError"); } });"""
)
FULL = f"""localStorage.setItem("{NAME}", "{{}}");
for (let size = 2 ** 22; size >= 1; size = Math.floor(size / 2)) {{
  try {{ for (let n = 0; ; n++) localStorage.setItem(`other ${{size}} ${{n}}`, "x".repeat(size)); }} catch {{}}
}}"""


@pytest.mark.parametrize(
    ("how", "words"), [(REFUSED, "refuses to keep anything"), (FULL, "has no room left")], ids=["refused", "full"]
)
def test_where_nothing_can_be_kept_the_page_says_so_and_goes_on(
    visiting: Visiting, served: server.Site, how: str, words: str
) -> None:
    troubles: list[str] = []
    with visiting(troubles) as page:
        page.add_init_script(how)
        page.goto(f"{served.url}plan/")
        plan_page = PlanPage(page)
        plan_page.wait()
        assert plan_page.load(FILE.encode()).startswith("Loaded: 5 numbers")
        expect(plan_page.section.locator(".ss-kept")).to_contain_text(words)
        plan_page.change("store_volume", "640")
        expect(plan_page.box("store_volume")).to_have_value("640")
        plan_page.press("Clear Store volume")
        assert "store_volume" not in plan_page.listed()
        plan_page.press("Undo")
        assert "store_volume = 640 gal | typed" in plan_page.save()
        troubles[:] = [trouble for trouble in troubles if "/assets/js" in trouble]  # the theme's own scripts mind


# ---- for every reader --------------------------------------------------------------------------------------------


@pytest.mark.parametrize(("size", "scheme"), [("desktop", "light"), ("phone", "dark")])
def test_the_plan_page_is_accessible_and_fits(planned: Planned, size: str, scheme: Any) -> None:
    wrong = TYPED | {
        "store_volume": {"text": "5 apples", "units": "us", "from": "typed"},
        "store_inside": {"text": "no", "units": "us", "from": "typed"},
    }
    with planned(wrong, viewport=SIZES[size], color_scheme=scheme) as plan_page:
        plan_page.load(b"nonsense")
        assert_accessible(plan_page.page, f"plan, {size}, {scheme}")
        assert plan_page.page.evaluate("document.documentElement.scrollWidth") <= SIZES[size]["width"]


def test_without_scripts_the_plan_page_says_that_nothing_is_kept(browser: Browser, served: server.Site) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(f"{served.url}plan/")
    expect(page.locator(".ss-plan-list")).to_contain_text("Nothing yet.")
    expect(page.locator(".ss-plan").get_by_role("button")).to_have_count(0)
    context.close()


def test_each_pipe_has_its_own_numbers_and_a_plan_from_before_is_brought_up(
    visiting: Visiting, served: server.Site, places: dict[str, str]
) -> None:
    with visiting([]) as page:
        page.goto(f"{served.url}plan/")
        plan_page = PlanPage(page)
        plan_page.wait()
        older = {"pipe_size": {"text": "1-1/2", "units": "us"}}
        page.evaluate("([name, plan]) => localStorage.setItem(name, plan)", [NAME, json.dumps(older)])
        page.reload()
        expect(plan_page.section.locator("[data-slot=said]")).to_contain_text("Each pipe has its own now")
        plan_page.wait()
        parts = ("heating", "charge", "gravity", "buried", "branch")
        assert set(stored(page)) == {f"{part}_pipe_size" for part in parts}
        expect(plan_page.row("charge_pipe_size")).to_contain_text("Nominal pipe size (charging loop)")

        page.goto(served.url + places["pipe"])
        for worksheet, size in (("pipe", "3/4"), ("charge-loop", "1")):
            reader = Reader(page, worksheet)
            reader.wait_until_live()
            expect(reader.box("pipe_size")).to_have_value("1-1/2")
            reader.type("pipe_size", size)
        page.reload()
        for worksheet, size in (("pipe", "3/4"), ("charge-loop", "1"), ("gravity-loop", "1-1/2")):
            reader = Reader(page, worksheet)
            reader.wait_until_live()
            expect(reader.box("pipe_size")).to_have_value(size)

        page.goto(f"{served.url}plan/")
        plan_page.wait()
        expect(plan_page.box("heating_pipe_size")).to_have_value("3/4")
        expect(plan_page.box("charge_pipe_size")).to_have_value("1")
        expect(plan_page.box("buried_pipe_size")).to_have_value("1-1/2")
