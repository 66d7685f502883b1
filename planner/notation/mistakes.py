"""Wrong examples, each with the messages it must give: kept so that messages stay as clear as they are."""

from __future__ import annotations


class Mistake:
    """A text that cannot be read, and every sentence that says why, in the order of the text."""

    def __init__(self, text: str, *sentences: str) -> None:
        self.text, self.sentences = text, sentences


MISTAKES = (
    Mistake(
        "",
        "line 1, column 1: a plan has no parts: it needs at least one block, such as 3' r18 light",
    ),
    Mistake(
        "title: Only a title",
        "line 1, column 1: a plan has no parts: it needs at least one block, such as 3' r18 light",
    ),
    Mistake(
        "3 r18 light",
        'line 1, column 1: "3" has no unit: write 3\' for minutes, 3" for seconds, or 3 strokes',
    ),
    Mistake(
        "700 r28",
        'line 1, column 1: "700" has no unit: write 700m for metres, 700" for seconds, or 700 strokes',
    ),
    Mistake(
        "6 x 100 r28",
        'line 1, column 5: "100" has no unit: write 100m for metres, 100" for seconds, or 100 strokes',
    ),
    Mistake(
        "r18 light",
        "line 1, column 1: a block begins with its length: write it before r18",
    ),
    Mistake(
        "3' r18 lite",
        'line 1, column 8: cannot read "lite" here: did you mean "light"?',
    ),
    Mistake(
        "3' r18 haf",
        'line 1, column 8: cannot read "haf" here: did you mean "half"?',
    ),
    Mistake(
        "3' r18 ful",
        'line 1, column 8: cannot read "ful" here: did you mean "full"?',
    ),
    Mistake(
        "3' r62 light",
        "line 1, column 4: rate 62 is above 50 strokes a minute",
    ),
    Mistake(
        "3' r5 light",
        "line 1, column 4: rate 5 is below 10 strokes a minute",
    ),
    Mistake(
        "3' r18 r20 light",
        "line 1, column 8: a second rate, r20: a block has one",
    ),
    Mistake(
        "3' r18 light half",
        "line 1, column 14: a second effort, half: a block has one",
    ),
    Mistake(
        "3' r18 @1:55 light",
        "line 1, column 14: a second effort, light: a block has one",
    ),
    Mistake(
        "0' r18 light",
        "line 1, column 1: length 0 is below 1 second",
    ),
    Mistake(
        '0" r18',
        "line 1, column 1: length 0 is below 1 second",
    ),
    Mistake(
        "500' r18 light",
        "line 1, column 1: 500' is too long: a block lasts 4 hours, 100 km or 2000 strokes at most",
    ),
    Mistake(
        "1'75\" r18",
        "line 1, column 1: 75 seconds are more than 59",
    ),
    Mistake(
        "99999999999' r18",
        "line 1, column 1: 99999999999' is too long: a block lasts 4 hours, 100 km or 2000 strokes at most",
    ),
    Mistake(
        '6 x 99999999999999m r28 / 9999999999" rest',
        "line 1, column 5: 99999999999999m is too long: a block lasts 4 hours, 100 km or 2000 strokes at most",
    ),
    Mistake(
        "9999999999 r20",
        "line 1, column 1: 9999999999 is too long: a block lasts 4 hours, 100 km or 2000 strokes at most",
    ),
    Mistake(
        "gap 99999999999'\n3' r18",
        "line 1, column 5: 99999999999' is too long: a block lasts 4 hours, 100 km or 2000 strokes at most",
    ),
    Mistake(
        "0m r20",
        "line 1, column 1: distance 0 is below 50 metres",
    ),
    Mistake(
        "200000m r20",
        "line 1, column 1: 200000m is too long: a block lasts 4 hours, 100 km or 2000 strokes at most",
    ),
    Mistake(
        "0 strokes r20",
        "line 1, column 1: strokes 0 is below 1 stroke",
    ),
    Mistake(
        "9000 strokes r20",
        "line 1, column 1: 9000 strokes is too long: a block lasts 4 hours, 100 km or 2000 strokes at most",
    ),
    Mistake(
        "20 strokes half",
        "line 1, column 1: a length in strokes needs a rate, such as r22",
    ),
    Mistake(
        "20 strokes",
        "line 1, column 1: a length in strokes needs a rate, such as r22",
    ),
    Mistake(
        "2000m r30 @",
        'line 1, column 11: "@" is no split: write it as @1:55 or @1:55.5',
    ),
    Mistake(
        "2000m r30 @0:40",
        "line 1, column 11: split 40 is below 60 seconds per 500 m",
    ),
    Mistake(
        "2000m r30 @9:00",
        "line 1, column 11: split 540 is above 360 seconds per 500 m",
    ),
    Mistake(
        "2000m r30 @1.55",
        'line 1, column 11: "@1.55" is no split: write it as @1:55 or @1:55.5',
    ),
    Mistake(
        "3' r18 2k+200",
        "line 1, column 8: offset from the 2 km split 200 is above 120 seconds",
    ),
    Mistake(
        "3' r18 2k+1.55",
        "line 1, column 8: offset from the 2 km split 1.55 is not in steps of 0.1 seconds",
    ),
    Mistake(
        "3' r18 -90\"",
        "line 1, column 8: change of split -90 is below -40 seconds",
    ),
    Mistake(
        "3' r18 -2",
        'line 1, column 8: "-2" has no unit: a change of split is written -2" or +1.5"',
    ),
    Mistake(
        "3' r18 900% power",
        "line 1, column 8: share of 2 km power 9 is above 3",
    ),
    Mistake(
        "3' r18 5% power",
        "line 1, column 8: share of 2 km power 0.05 is below 0.1",
    ),
    Mistake(
        "3' r18 effort 11",
        "line 1, column 8: effort on the 0 to 10 scale 11 is above 10",
    ),
    Mistake(
        "3' r18 effort 6.3",
        "line 1, column 8: effort on the 0 to 10 scale 6.3 is not in steps of 0.5",
    ),
    Mistake(
        "3' r18 effort",
        'line 1, column 8: "effort" needs a number from 0 to 10 behind it, such as effort 6.5',
    ),
    Mistake(
        "3' r18 hr",
        'line 1, column 8: "hr" needs a heart rate: write hr 150, hr 80% max or hr 70% reserve',
    ),
    Mistake(
        "3' r18 hr 20",
        "line 1, column 8: heart rate 20 is below 40 beats a minute",
    ),
    Mistake(
        "3' r18 hr 300",
        "line 1, column 8: heart rate 300 is above 230 beats a minute",
    ),
    Mistake(
        "3' r18 hr 10% max",
        "line 1, column 8: share of heart rate 10 is below 20 percent",
    ),
    Mistake(
        "3 x (",
        "line 1, column 1: this bracket is never closed: add a line with )",
    ),
    Mistake(
        "3 x (\n)",
        "line 2, column 1: the bracket opened on line 1 is empty",
    ),
    Mistake(
        "3 x (\n3' r18 light",
        "line 1, column 1: this bracket is never closed: add a line with )",
    ),
    Mistake(
        ")",
        "line 1, column 1: this bracket closes nothing: open a repeat first, such as 3 x (",
    ),
    Mistake(
        "3' r18 light)",
        "line 1, column 13: this bracket closes nothing: open a repeat first, such as 3 x (",
    ),
    Mistake(
        "10x",
        "line 1, column 4: the line ends too early: a length such as 3', 500m or 20 strokes or an opening bracket is missing",
    ),
    Mistake(
        "0 x 3' r18",
        "line 1, column 1: repetitions 0 is below 1 time",
    ),
    Mistake(
        "101 x 3' r18",
        "line 1, column 1: repetitions 101 is above 100 times",
    ),
    Mistake(
        "1000000000 x 3' r18 light",
        "line 1, column 1: repetitions 1000000000 is above 100 times",
    ),
    Mistake(
        "6 x 700m r28 /",
        "line 1, column 15: the line ends too early: a length such as 3', 500m or 20 strokes or an opening bracket is missing",
    ),
    Mistake(
        "6 x 700m r28 3' rest",
        "line 1, column 14: a second length, 3': what comes between repetitions follows a slash",
    ),
    Mistake(
        "3 x (10 strokes r28 full, )",
        "line 1, column 27: a block is missing before this bracket",
    ),
    Mistake(
        "3 x (10 strokes r28 full",
        "line 1, column 25: the line ends too early: a comma and the next block of the group or a closing bracket is missing",
    ),
    Mistake(
        '3 x (10 strokes r28 full 50" r20 light)',
        'line 1, column 26: a second length, 50": put a comma between the blocks of a group',
    ),
    Mistake(
        "focus: long arms",
        "line 1, column 1: focus belongs below a block: write the block first",
    ),
    Mistake(
        "call: now",
        "line 1, column 1: call belongs below a block: write the block first",
    ),
    Mistake(
        "drill: feet out",
        "line 1, column 1: drill belongs below a block: write the block first",
    ),
    Mistake(
        "warm-up",
        "line 1, column 1: there is nothing to row here: write at least one block, such as 3' r18 light",
    ),
    Mistake(
        "warm-up\nmain\n3' r18 light",
        "line 1, column 1: there is nothing to row here: write at least one block, such as 3' r18 light",
    ),
    Mistake(
        "warm up please",
        'line 1, column 1: cannot read "warm" here: did you mean "warm-up"?',
    ),
    Mistake(
        "title: A\ntitle: B\n3' r18",
        "line 2, column 1: a second title: a plan has one",
    ),
    Mistake(
        "title:\n3' r18",
        "line 1, column 7: the text is empty: write something or leave it out",
    ),
    Mistake(
        "title: long long long long long long long long long long long long long long long long long long long long \n3' r18 light",
        "line 1, column 8: a text of 99 characters is longer than 80",
    ),
    Mistake(
        "title: hid\u202eden\n3' r18",
        "line 1, column 8: the text holds U+202E, which cannot be shown: leave it out",
    ),
    Mistake(
        "title: AㅤB\n3' r18",
        "line 1, column 8: the text holds U+3164, which cannot be shown: leave it out",
    ),
    Mistake(
        "3' r18 light\nfocus:",
        "line 2, column 7: the text is empty: write something or leave it out",
    ),
    Mistake(
        "3' r18 light\nfocus: a\nfocus: b",
        "line 3, column 1: a second focus for one block: a block has one",
    ),
    Mistake(
        "3' r18 light\ndrill: a\ndrill: b",
        "line 3, column 1: a second drill for one block: a block has one",
    ),
    Mistake(
        "3' r18 light\ncall at 0: now",
        "line 2, column 9: strokes 0 is below 1 stroke",
    ),
    Mistake(
        "3' r18 light\ncall last 9999: now",
        "line 2, column 11: strokes 9999 is above 2000 strokes",
    ),
    Mistake(
        "open r20 light\ncall last 5: now",
        "line 2, column 6: an open block has no last strokes: use call at",
    ),
    Mistake(
        "3' r18 light\nsetting: 4",
        "line 2, column 1: a setting is written setting: lever 4 or setting: drag factor 120",
    ),
    Mistake(
        "3' r18 light\nsetting: lever 14",
        "line 2, column 16: lever 14 is above 10",
    ),
    Mistake(
        "setting: drag factor 900\n3' r18",
        "line 1, column 22: drag factor 900 is above 250",
    ),
    Mistake(
        "gap",
        "line 1, column 4: a gap needs a length of time and nothing else, such as gap 5'",
    ),
    Mistake(
        "gap soon",
        "line 1, column 5: a gap needs a length of time and nothing else, such as gap 5'",
    ),
    Mistake(
        "3' r18 light\ngap 5 metres",
        "line 2, column 5: a gap needs a length of time and nothing else, such as gap 5'",
    ),
    Mistake(
        'each side 20" swap 10" r18 light',
        "line 1, column 1: a length by sides needs a line below it that names the drill, such as drill: one foot",
    ),
    Mistake(
        'each side 2" r18 light\ndrill: one foot',
        "line 1, column 11: time on a side 2 is below 5 seconds",
    ),
    Mistake(
        'each side 20" swap 90" r18\ndrill: one foot',
        "line 1, column 20: time to swap 90 is above 60 seconds",
    ),
    Mistake(
        "each side r18 light",
        "line 1, column 11: only a time can stand here, such as 20\" or 5', not r18",
    ),
    Mistake(
        '3 x (10 strokes r28 full, 50" r20 light)\nfocus: which',
        "line 2, column 1: focus needs one block above it: give each block its own line",
    ),
    Mistake(
        "3 x (\n3' r18\nmain\n3' r20",
        "line 3, column 1: a heading stands inside the bracket opened on line 1: close it with )",
    ),
    Mistake(
        "3 x (\n3' r18\ngap 5'",
        "line 3, column 1: a gap stands inside the bracket opened on line 1: close it with )",
    ),
    Mistake(
        "2 x (2 x (2 x (2 x (2 x (3' r18)))))",
        "line 1, column 25: repeats stand more than 4 deep: write the inner ones out",
    ),
    Mistake(
        '90 x (90 x 1" r20)',
        "line 1, column 1: the plan comes to 8100 blocks when its repeats are rolled out, more than 500: use fewer repetitions",
    ),
    Mistake(
        "100 x 200' r20",
        "line 1, column 1: the plan lasts about 333:20:00, more than 12:00:00: shorten a block or use fewer repetitions",
    ),
    Mistake(
        "rest",
        "line 1, column 5: the line ends too early: a time such as 3', 50\" or 1'30\" is missing",
    ),
    Mistake(
        "5' rest r20",
        "line 1, column 9: a rest has no rate",
    ),
    Mistake(
        "hello",
        'line 1, column 1: cannot read "hello" here: it could be a length such as 3\', 500m or 20 strokes or a repeat such as 6 x',
    ),
    Mistake(
        "3' light r18 please",
        'line 1, column 14: cannot read "please" here: nothing more fits on this line',
    ),
    Mistake(
        "light 3'",
        "line 1, column 1: a block begins with its length: write it before light",
    ),
    Mistake(
        "🙂",
        'line 1, column 1: cannot read "🙂" here: it could be a length such as 3\', 500m or 20 strokes or a repeat such as 6 x',
    ),
    Mistake(
        "3' r18 light\nfocus: a\n2' r20 lite\nfocus: b",
        'line 3, column 8: cannot read "lite" here: did you mean "light"?',
    ),
    Mistake(
        "3 x (\n3' r99\nfocus: c\n)",
        "line 2, column 4: rate 99 is above 50 strokes a minute",
    ),
    Mistake(
        "200 x (\n3' r18\n)",
        "line 1, column 1: repetitions 200 is above 100 times",
    ),
    Mistake(
        ") / (\n3' r18\n)",
        "line 1, column 1: this bracket closes nothing: open a repeat first, such as 3 x (",
    ),
    Mistake(
        "3 x (\n3' r18\n) / (\n1' rest\n) / (\n1' rest\n)",
        "line 5, column 1: a second slash: what comes between repetitions stands in one bracket",
    ),
    Mistake(
        "3 x (\n3' r18\n) / (\n)",
        "line 4, column 1: the bracket opened on line 3 is empty",
    ),
    Mistake(
        "3' rest\nfocus: breathe",
        "line 2, column 1: a rest has no focus: that belongs below a block",
    ),
    Mistake(
        "3' rest\ncall: breathe",
        "line 2, column 1: a rest has no call: that belongs below a block",
    ),
    Mistake(
        "3' r20 rest",
        "line 1, column 8: a rest is a time and the word, nothing else: write 3' rest",
    ),
    Mistake(
        "500m rest",
        "line 1, column 6: a rest is a time and the word, nothing else: write 3' rest",
    ),
    Mistake(
        "rest 3' r20",
        "line 1, column 9: a rest has no rate",
    ),
    Mistake(
        "5' r20, light",
        "line 1, column 7: a comma stands only inside brackets: give each block a line of its own",
    ),
    Mistake(
        "3' r18 (easy)",
        "line 1, column 8: a bracket follows a number of times: write 3 x (",
    ),
    Mistake(
        "3' r18 / 1' rest",
        "line 1, column 8: a slash follows a repeat, once: write 6 x 700m r28 / 3' rest",
    ),
    Mistake(
        "(3' r18, 2' r20) x 3",
        "line 1, column 1: a bracket follows a number of times: write 3 x (",
    ),
    Mistake(
        "2 x 3 x 1' r20",
        "line 1, column 5: a repeat inside a repeat needs brackets: write 2 x (3 x 1' r20)",
    ),
    Mistake(
        "3' r18 swap 10\"",
        'line 1, column 8: a swap belongs to a length by sides: write each side 20" swap 10"',
    ),
    Mistake(
        "3' r18 1:55",
        "line 1, column 8: a split is written @1:55",
    ),
    Mistake(
        "2000m r30 @1:75",
        "line 1, column 11: 75 seconds of a split are more than 59",
    ),
    Mistake(
        "2000m r30 @1:5",
        'line 1, column 11: "@1:5" is no split: write it as @1:55 or @1:55.5',
    ),
    Mistake(
        "3' r18 @",
        'line 1, column 8: "@" is no split: write it as @1:55 or @1:55.5',
    ),
    Mistake(
        "2k power",
        'line 1, column 4: cannot read "power" here: it could be a rate such as r20, an effort such as light, @1:55, 2k+1, 65% power, effort 6 or hr 150 or the end of the line',
    ),
    Mistake(
        "3' r18 2k power",
        'line 1, column 11: cannot read "power" here: nothing more fits on this line',
    ),
    Mistake(
        "3' r18 65%",
        'line 1, column 8: "65%" of what? Write 65% power, hr 80% max or hr 70% reserve',
    ),
    Mistake(
        "3' r18 65% pwr",
        'line 1, column 8: "65%" of what? Write 65% power, hr 80% max or hr 70% reserve',
    ),
    Mistake(
        "3' r18 hr 80%",
        'line 1, column 8: "hr" needs a heart rate: write hr 150, hr 80% max or hr 70% reserve',
    ),
    Mistake(
        "3' r18 hr 80% mx",
        'line 1, column 8: "hr" needs a heart rate: write hr 150, hr 80% max or hr 70% reserve',
    ),
    Mistake(
        "3' r18 effort six",
        'line 1, column 8: "effort" needs a number from 0 to 10 behind it, such as effort 6.5',
    ),
    Mistake(
        "3' r20.5",
        'line 1, column 4: "r20.5" is no rate: write one whole number, such as r20',
    ),
    Mistake(
        "3' r20-22",
        'line 1, column 4: "r20-22" is no rate: write one whole number, such as r20',
    ),
    Mistake(
        "3' 20",
        'line 1, column 4: "20" has no unit: a rate is written r20',
    ),
    Mistake(
        "3' r",
        'line 1, column 4: "r" needs a number behind it: a rate is written r20',
    ),
    Mistake(
        "20",
        'line 1, column 1: "20" has no unit: write 20\' for minutes, 20" for seconds, or 20 strokes',
    ),
    Mistake(
        "3' r18 focus: arms",
        'line 1, column 8: "focus:" begins a line of its own, below the block',
    ),
    Mistake(
        "3' r18 gap 5'",
        'line 1, column 8: "gap" begins a line of its own',
    ),
    Mistake(
        "3' r18 rase",
        'line 1, column 8: cannot read "rase" here: did you mean "race"?',
    ),
    Mistake(
        "5' rst",
        'line 1, column 4: cannot read "rst" here: did you mean "rest"?',
    ),
    Mistake(
        "opn r18",
        'line 1, column 1: cannot read "opn" here: did you mean "open"?',
    ),
    Mistake(
        'each side 20"',
        "line 1, column 1: a length by sides needs a line below it that names the drill, such as drill: one foot",
    ),
    Mistake(
        "each side 500m",
        "line 1, column 11: only a time can stand here, such as 20\" or 5', not 500m",
    ),
    Mistake(
        "each side 3 x",
        "line 1, column 14: the line ends too early: a time such as 3', 50\" or 1'30\" is missing",
    ),
    Mistake(
        'each side 9 x 20" r18\ndrill: one foot',
        "line 1, column 11: sides 18 is above 8 sides",
    ),
    Mistake(
        'each 20" r18',
        'line 1, column 1: cannot read "each" here: did you mean "each side"?',
    ),
    Mistake(
        "lever four",
        "line 1, column 1: a setting is written setting: lever 4 or setting: drag factor 120",
    ),
    Mistake(
        "setting: lever 4\nsetting: lever 5\n3' r18",
        "line 2, column 1: a second setting here: leave one of them out",
    ),
    Mistake(
        "3' r18\nsetting: lever 4\nlever 5",
        "line 3, column 1: a second setting here: leave one of them out",
    ),
    Mistake(
        "3' r18\ncall at ten: now",
        "line 2, column 6: a call is placed by strokes: write call at 10: ... or call last 5: ..., or call: and the words",
    ),
    Mistake(
        "3' r18\ncall last: now",
        "line 2, column 6: a call is placed by strokes: write call at 10: ... or call last 5: ..., or call: and the words",
    ),
    Mistake(
        "3' r18\ncall at 10:",
        "line 2, column 12: the text is empty: write something or leave it out",
    ),
    Mistake(
        "warm-up 5'",
        'line 1, column 1: "warm-up" stands alone on its line: a heading is warm-up, main or cool-down',
    ),
    Mistake(
        "colldown",
        'line 1, column 1: cannot read "colldown" here: did you mean "cool-down"?',
    ),
    Mistake(
        "wormup\n3' r18",
        'line 1, column 1: cannot read "wormup" here: did you mean "warm-up"?',
    ),
    Mistake(
        "focs: long arms",
        'line 1, column 1: cannot read "focs:" here: did you mean "focus"?',
    ),
    Mistake(
        "summary: a\nsummary: b\n3' r18",
        "line 2, column 1: a second summary: a plan has one",
    ),
    Mistake(
        "set-up:\n3' r18",
        "line 1, column 8: the text is empty: write something or leave it out",
    ),
    Mistake(
        "setup: a\nset-up: b\n3' r18",
        "line 2, column 1: a second set-up: a plan has one",
    ),
    Mistake(
        "title: a\u2028b\n3' r18",
        "line 1, column 8: the text holds U+2028, which cannot be shown: leave it out",
    ),
    Mistake(
        "title: \u200b\n3' r18",
        "line 1, column 8: the text holds U+200B, which cannot be shown: leave it out",
    ),
    Mistake(
        "title: á̂̃̄̅̆\n3' r18",
        "line 1, column 8: more than 4 marks are piled on one letter",
    ),
    Mistake(
        "drill: x\n3' r18",
        "line 1, column 1: drill belongs below a block: write the block first",
    ),
    Mistake(
        "3' r18\ndrill: a name that is much too long to be the name of a drill, far too long",
        "line 2, column 8: a text of 68 characters is longer than 60",
    ),
    Mistake(
        "3' r62 light\n2' r20 light\n4' r20 lite",
        "line 1, column 4: rate 62 is above 50 strokes a minute",
        'line 3, column 8: cannot read "lite" here: did you mean "light"?',
    ),
    Mistake(
        "# 3' r18",
        'line 1, column 1: cannot read "#" here: it could be a length such as 3\', 500m or 20 strokes or a repeat such as 6 x',
    ),
    Mistake(
        "gap 5\n3' r18",
        'line 1, column 5: "5" has no unit: a time is written 5\' or 5 s',
    ),
    Mistake(
        "gap 500m\n3' r18",
        "line 1, column 5: a gap needs a length of time and nothing else, such as gap 5'",
    ),
    Mistake(
        "gap 5' r18",
        "line 1, column 8: a gap needs a length of time and nothing else, such as gap 5'",
    ),
    Mistake(
        "gap 0'\n3' r18",
        "line 1, column 5: length 0 is below 1 second",
    ),
    Mistake(
        "gap 300'\n3' r18",
        "line 1, column 5: 300' is too long: a block lasts 4 hours, 100 km or 2000 strokes at most",
    ),
    Mistake(
        "10 strokes",
        "line 1, column 1: a length in strokes needs a rate, such as r22",
    ),
    Mistake(
        "1h75 r20",
        "line 1, column 1: 75 minutes are more than 59",
    ),
    Mistake(
        "3 x (3' r18,",
        "line 1, column 13: the line ends too early: a length such as 3', 500m or 20 strokes or a repeat such as 6 x is missing",
    ),
    Mistake(
        "3 x 3' r18 /",
        "line 1, column 13: the line ends too early: a length such as 3', 500m or 20 strokes or an opening bracket is missing",
    ),
    Mistake(
        "2 x (\n2 x (\n2 x (\n2 x (\n2 x (\n3' r18\n)\n)\n)\n)\n)",
        "line 5, column 1: repeats stand more than 4 deep: write the inner ones out",
    ),
    Mistake(
        "3' r18\n" + "call: now\n" * 21,
        "line 22, column 1: more than 20 calls for one block",
    ),
    Mistake(
        "3' r18\n" * 101,
        "line 1, column 1: 101 blocks are more than 100 in one list: use repeats",
    ),
    Mistake(
        "gap 1'\ngap 1'\ngap 1'\ngap 1'\ngap 1'\ngap 1'\ngap 1'\ngap 1'\ngap 1'\ngap 1'\ngap 1'\ngap 1'\ngap 1'\n",
        "line 1, column 1: 13 parts are more than 12",
    ),
    Mistake(
        "\n" * 15_000,
        "line 1, column 1: the text is longer than 15000 lines or 262144 characters: shorten it",
    ),
    Mistake(
        "3' r18" + " " * 1_000 + "light",
        "line 1, column 1001: a line of 1011 characters is longer than 1000",
    ),
)
