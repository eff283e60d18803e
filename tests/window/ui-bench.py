#!/usr/bin/env python3
"""Bench work: a heat plan that is refused for the stones until they come out, and a quote
whose sums are compared with a computation by hand."""
import re
import time

from story import SHOTS, Story, equal, wearmark

story = Story("bench")


def remedies():
    return story.records().rows("SELECT * FROM remedy ORDER BY id")


def choose(name, item):
    """As Story.choose, then a click beside it: GTK 4.8 on X11 swallows the click after a
    list of a drop-down was closed."""
    story.choose(name, item)
    story.app.click_at(760, 800)


def shot(name):
    SHOTS.mkdir(parents=True, exist_ok=True)
    story.app.screenshot(SHOTS / f"bench-{name}.png")


@story.part("a ring with an emerald, a finding, and a remedy that takes the torch")
def begin():
    app = story.start()
    story.take_in(kind="Ring with claws")
    app.key("ctrl+alt+s")
    story.fill("Species", "Emerald", key="Return")
    story.on_disk("the emerald", lambda r: r.rows(
        "SELECT 1 FROM stone_group WHERE species = 'emerald'"))
    app.key("alt+2")
    app.find("Claw tips, not looked at", "button")
    app.key("Return", "3")
    story.on_disk("the finding", lambda r: 3 in r.severities())
    app.key("alt+3")
    app.press(re.compile("^retip the claws"), "button")
    story.on_disk("the remedy", lambda r: r.rows("SELECT 1 FROM remedy"))


@story.part("without a metal the plan says so and offers the field")
def no_metal():
    app = story.app
    app.key("ctrl+2")
    app.find(re.compile("The metal of this piece is not entered"), "label")
    shot("no-metal")
    story.fill("Metal of the piece", "18 k yellow gold", key="Return")
    story.on_disk("the metal", lambda r: r.piece()["metal"] == "au750y")
    app.find(re.compile("nobody has said yet how it is done"), "label")


@story.part("an emerald beside the torch refuses the plan, and so do unknown old joints")
def refused():
    app = story.app
    app.key("ctrl+1")
    choose("How", "solder")
    story.on_disk("the method", lambda r: r.rows("SELECT 1 FROM remedy WHERE method = 'solder'"))
    choose("Solder", "18 k yellow gold solder, easy · not safe here")
    story.on_disk("the solder", lambda r: r.rows("SELECT 1 FROM remedy WHERE solder = 'au18_e'"))
    shot("remedies")
    app.key("ctrl+2")
    banner = app.find(re.compile("This plan can not be made safe"), "label").name
    assert "an old joint would melt again" in banner, banner
    assert "Emerald" in banner, banner
    shot("refused")
    choose("Old joints on the piece", "none: no soldered joint")
    story.on_disk("no old joints", lambda r: r.piece()["old_joints"] == "none")
    banner = app.find(re.compile("This plan can not be made safe"), "label").name
    assert "old joint" not in banner and "Emerald" in banner, banner


@story.part("with the stone out the plan is told with its margins")
def allowed():
    app = story.app
    app.key("ctrl+1")
    app.press(re.compile("^stones come out"), "checkbox")
    story.on_disk("the stones out", lambda r: remedies()[0]["stones_out"] == 1)
    app.key("ctrl+2")
    app.wait_gone(re.compile("This plan can not be made safe"), "label")
    # Solidus 885 less flow 720 and 30 over it.
    app.find(re.compile("^135 K"), "label")
    app.find(re.compile("^Emerald.*out first$"), "label")
    shot("plan")


@story.part("the quote is what was reckoned by hand, and an answer keeps its price")
def quote():
    app = story.app
    wearmark(story.archive, "verify")
    app.key("ctrl+comma")
    app.press("Prices", "radio button" if not app.find_all("Prices", "tab") else "tab")
    story.fill("Hourly rate", "54.00", key="Return")
    story.on_disk("the rate", lambda r: r.rows(
        "SELECT 1 FROM setting WHERE name = 'hourly-rate' AND value = '5400 EUR'"))
    story.fill("Tax in per cent", "19", key="Return")
    story.on_disk("the tax", lambda r: r.rows(
        "SELECT 1 FROM setting WHERE name = 'tax-bp' AND value = '1900'"))
    story.fill("18 k yellow gold", "38.15", key="Return")
    story.on_disk("the gold", lambda r: r.rows(
        "SELECT 1 FROM setting WHERE name = 'gram-price-au750y' AND value = '3815 EUR'"))
    shot("settings")
    app.key("Escape")
    time.sleep(1)
    app.key("ctrl+3")
    app.press("Add metal", "button")
    story.on_disk("the metal line", lambda r: r.rows(
        "SELECT 1 FROM material WHERE gram_price_minor = 3815"))
    story.fill("Weight of metal", "0.42", key="Return")
    # 0.42 g at 38.15 a gram: 16.023
    story.on_disk("the weight", lambda r: r.rows(
        "SELECT 1 FROM material WHERE mass_mg = 420 AND price_minor = 1602"))
    story.fill("Minutes at the bench", "35", key="Return")
    story.on_disk("the minutes", lambda r: remedies()[0]["minutes"] == 35)
    # 35 minutes at 54.00: 31.50; with the metal 47.52; 19 % of it 9.0288; together 56.55
    app.find(re.compile(r"^47\.52.EUR$"), "label")
    app.find(re.compile(r"^9\.03.EUR$"), "label")
    app.find(re.compile(r"^56\.55.EUR$"), "label")
    shot("quote")
    equal(remedies()[0]["price_minor"], None, "a price nobody typed")
    choose("The customer's answer", "agreed")
    story.on_disk("agreed at its price", lambda r: (
        remedies()[0]["answer"], remedies()[0]["price_minor"]) == ("agreed", 4752))
    app.key("ctrl+z")
    story.on_disk("not answered", lambda r: (
        remedies()[0]["answer"], remedies()[0]["price_minor"]) == (None, None))


@story.part("it closes with nothing to complain about")
def close():
    story.close_cleanly()


story.run()
