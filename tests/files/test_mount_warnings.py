"""What is doubtful of mounts and fasteners: nothing counts as holding whose figures nobody knows."""

from __future__ import annotations

import pytest

from said import said
from stickwright.errors import Problem
from stickwright.files.kit_warnings import kit_warnings
from stickwright.files.mount_warnings import mount_warnings
from stickwright.files.toml_lines import parse_toml

ARM = '[[mount]]\nname = "ivy"\nkind = "friction arm"\nlinks_mm = [160, 130]\nholding_nm = 4\ntube_mm = [16, 38]\n'
COUPLING = '[[mount]]\nname = "catch"\nkind = "breakaway coupling"\nrelease_n = [5, 20]\n'
HOOKS = '[[fastener]]\nname = "burr"\nkind = "hook-and-loop"\nshear_kpa = 65\ntension_kpa = 38\ntest_method = "label"\n'
SHEET = '[[fastener]]\nname = "grip"\nkind = "anti-slip sheet"\nfriction = 0.8\n'
STICK = '[[stick]]\nname = "willow"\nstart_force_n = 0.2\nfull_force_n = 0.5\ntravel_mm = 6\n'


def sentences(noticed):
    mark = {"query": "?", "note": "."}
    return [
        f"! {said(one.sentence)}" if isinstance(one, Problem) else f"{mark[one.level]} {said(one.text)}"
        for one in noticed
    ]


def told(text):
    """Sentences of what is noticed: '!' refused, '?' asked, '.' noted."""
    return sentences(mount_warnings(parse_toml(text, "kit.toml")))


def test_whole_mounts_raise_no_warning():
    """An arm, a coupling, a plate; two fasteners."""
    assert (
        told(ARM + COUPLING + '[[mount]]\nname = "slab"\nkind = "plate"\ntilts_deg = [0, 20]\n' + HOOKS + SHEET) == []
    )


@pytest.mark.parametrize(
    ("text", "words"),
    [
        (
            ARM.replace("[16, 38]", "[38, 16]"),
            '! kit.toml, line 6, mount "ivy", tube_mm: found [38, 16], expected the smaller first. Swap the two.',
        ),
        (ARM + "edge_cm = [4, 1.5]\n", 'mount "ivy", edge_cm: found [4, 1.5], expected the smaller first.'),
        (ARM + "tilts_deg = [20, 0]\n", 'mount "ivy", tilts_deg: found [20, 0]'),
        (COUPLING.replace("[5, 20]", "[20, 5]"), 'mount "catch", release_n: found [20, 5]'),
        (
            ARM.replace("tube_mm = [16, 38]\n", ""),
            '? kit.toml, line 1, mount "ivy": what its clamp holds is not recorded, so it is not used. Open and '
            "close the clamp with a tape measure beside it: tube_mm = [thinnest, thickest] or edge_mm = "
            "[thinnest, thickest].",
        ),
        (
            '[[mount]]\nname = "jaw"\nkind = "table clamp"\ntube_mm = [16, 38]\n',
            "what its clamp holds is not recorded, so it is not used. Open and close the clamp with a tape "
            "measure beside it: edge_mm = [thinnest, thickest].",
        ),
        ('[[mount]]\nname = "jaw"\nkind = "tube clamp"\nedge_mm = [16, 38]\n', "beside it: tube_mm = [thinnest, thickest]."),
        (
            ARM.replace("holding_nm = 4\n", ""),
            '? kit.toml, line 1, mount "ivy": the holding moment of its joints (holding_nm) is not recorded, so '
            "whether it reaches and holds is not known.",
        ),
        (ARM.replace("links_mm = [160, 130]\n", ""),
            'kit.toml, line 1, mount "ivy": the lengths of its links (links_mm) are not recorded, so whether it '
            "reaches and holds is not known."),
        (
            ARM.replace("links_mm = [160, 130]\nholding_nm = 4\n", "").replace("friction arm", "gooseneck"),
            'kit.toml, line 1, mount "ivy": the lengths of its links (links_mm) and the holding moment of its '
            "joints (holding_nm) are not recorded, so whether it reaches and holds is not known.",
        ),
        (ARM + "clamp_width_mm = 2.5\n", "2.5 mm is unusual for the width of the clamp along a tube or edge; 8 to 200 mm is usual. Were "
            "inches typed as millimetres?"),
        (ARM + "jaw_depth_mm = 350\n", 'kit.toml, line 7, mount "ivy", jaw_depth_mm: 350 mm is unusual for the depth of the jaw; 8 to 200 '
            "mm is usual. Is it a typing error?"),
        (ARM + "take_off_s = 900\n", "900 s to take it off for a transfer. Is this the time to set it up (setup_min)?"),
        (COUPLING.replace("release_n = [5, 20]\n", ""),
            'kit.toml, line 1, mount "catch": the release force is not recorded, so it does not count as a '
            "breakaway."),
        (
            HOOKS.replace("shear_kpa = 65\ntension_kpa = 38\n", ""),
            '? kit.toml, line 1, fastener "burr": shear_kpa and tension_kpa are not recorded. Read the label; '
            "until then it counts as not holding.",
        ),
        (HOOKS.replace("tension_kpa = 38\n", ""),
            'kit.toml, line 1, fastener "burr": tension_kpa is not recorded. Read the label; until then it '
            "counts as not holding."),
        (SHEET.replace("friction = 0.8\n", ""),
            'kit.toml, line 1, fastener "grip": friction is not recorded. Read the label; until then it counts '
            "as not holding."),
        (
            HOOKS.replace('test_method = "label"\n', ""),
            '. kit.toml, line 1, fastener "burr": strengths without their test method (test_method). Figures '
            "from different tests cannot be compared.",
        ),
    ],
)  # fmt: skip
def test_one_warning_is_one_sentence(text, words):
    """Each slip by itself is told once, at its mount or fastener."""
    (sentence,) = told(text)
    assert words in sentence, sentence


@pytest.mark.parametrize(
    ("text", "words"),
    [
        (
            STICK + ARM.replace("ivy", "Willow"),
            '! kit.toml, line 7, mount "Willow", name: found a mount with the name of the stick "Willow" (line '
            "1), expected a different name for each device, as plans and requests use the name alone. Choose "
            "another name for the mount.",
        ),
        (STICK + ARM + HOOKS.replace("burr", "ivy"), 'found a fastener with the name of the mount "ivy" (line 6)'),
        (STICK + ARM + ARM.replace("ivy", "Ivy"), 'found a second mount called "Ivy" (the first: line 6)'),
        (STICK + HOOKS + HOOKS, 'found a second fastener called "burr" (the first: line 6)'),
        (STICK + ARM + "in_stock = 0\n",
            '? kit.toml: none in stock and no price, so never used: "ivy" (line 6). Enter in_stock when there is '
            "one, or a price if one may be bought."),
        (STICK + HOOKS + "in_stock = 0\nprice = 3\n", '. kit.toml: none in stock, so to order: "burr" (line 6).'),
    ],
)  # fmt: skip
def test_mounts_are_part_of_the_kit(text, words):
    """One name for one thing, and stock of zero, as for sticks."""
    (sentence,) = sentences(kit_warnings(parse_toml(text, "kit.toml")))
    assert words in sentence, sentence
