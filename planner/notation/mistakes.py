"""Wrong examples, each with the message it must give: kept so that messages stay as clear as they are."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Mistake:
    """A text that cannot be read, and the first sentence that says why."""

    text: str
    sentence: str


MISTAKES = (
    Mistake("", "line 1, column 1: a plan has no parts: it needs at least one block, such as 3' r18 light"),
    Mistake(
        "title: Only a title",
        "line 1, column 1: a plan has no parts: it needs at least one block, such as 3' r18 light",
    ),
    Mistake(
        "3 r18 light",
        'line 1, column 1: cannot read "3" here (it could be: a length of time such as 3\', 50" or 1\'30"; a distance such as 500m or 2 km; a number of strokes such as 20 strokes; open, for a block that a tap ends)',
    ),
    Mistake(
        "r18 light",
        'line 1, column 1: cannot read "r18" here (it could be: a length of time such as 3\', 50" or 1\'30"; a distance such as 500m or 2 km; a number of strokes such as 20 strokes; open, for a block that a tap ends)',
    ),
    Mistake(
        "3' r18 lite",
        'line 1, column 8: cannot read "lite": did you mean "light"? (it could be: a rate such as r20; a pressure: light, half, three-quarter, full or race; a split such as @1:55; an offset from the 2 km split such as 2k+1)',
    ),
    Mistake(
        "3' r18 haf",
        'line 1, column 8: cannot read "haf": did you mean "half"? (it could be: a rate such as r20; a pressure: light, half, three-quarter, full or race; a split such as @1:55; an offset from the 2 km split such as 2k+1)',
    ),
    Mistake(
        "3' r18 ful",
        'line 1, column 8: cannot read "ful": did you mean "full"? (it could be: a rate such as r20; a pressure: light, half, three-quarter, full or race; a split such as @1:55; an offset from the 2 km split such as 2k+1)',
    ),
    Mistake("3' r62 light", "line 1, column 4: rate 62 is above 50 strokes a minute"),
    Mistake("3' r5 light", "line 1, column 4: rate 5 is below 10 strokes a minute"),
    Mistake("3' r18 r20 light", "line 1, column 8: a second rate, r20: a block has one"),
    Mistake("3' r18 light half", "line 1, column 14: a second effort, half: a block has one"),
    Mistake("3' r18 @1:55 light", "line 1, column 14: a second effort, light: a block has one"),
    Mistake("0' r18 light", "line 1, column 1: length 0 is below 1 seconds"),
    Mistake('0" r18', "line 1, column 1: length 0 is below 1 seconds"),
    Mistake("500' r18 light", "line 1, column 1: length 30000 is above 14400 seconds"),
    Mistake("1'75\" r18", "line 1, column 1: 75 seconds are more than 59"),
    Mistake("0m r20", "line 1, column 1: distance 0 is below 1 metres"),
    Mistake("200000m r20", "line 1, column 1: distance 200000 is above 100000 metres"),
    Mistake("0 strokes r20", "line 1, column 1: strokes 0 is below 1 strokes"),
    Mistake("9000 strokes r20", "line 1, column 1: strokes 9000 is above 2000 strokes"),
    Mistake("20 strokes half", "line 1, column 1: a length in strokes needs a rate, such as r22"),
    Mistake("20 strokes", "line 1, column 1: a length in strokes needs a rate, such as r22"),
    Mistake(
        "2000m r30 @",
        'line 1, column 11: cannot read "@" here (it could be: a rate such as r20; a pressure: light, half, three-quarter, full or race; a split such as @1:55; an offset from the 2 km split such as 2k+1)',
    ),
    Mistake("2000m r30 @0:40", "line 1, column 11: split 40 is below 60 seconds per 500 m"),
    Mistake("2000m r30 @9:00", "line 1, column 11: split 540 is above 360 seconds per 500 m"),
    Mistake(
        "2000m r30 @1.55",
        'line 1, column 11: cannot read "@1.55" here (it could be: a rate such as r20; a pressure: light, half, three-quarter, full or race; a split such as @1:55; an offset from the 2 km split such as 2k+1)',
    ),
    Mistake("3' r18 2k+200", "line 1, column 8: offset from the 2 km split 200 is above 120 seconds"),
    Mistake(
        "3' r18 2k+1.55", "line 1, column 8: offset from the 2 km split 1.55 is not in steps of 0.1 seconds"
    ),
    Mistake(
        "2 kk r20",
        'line 1, column 1: cannot read "2" here (it could be: a length of time such as 3\', 50" or 1\'30"; a distance such as 500m or 2 km; a number of strokes such as 20 strokes; open, for a block that a tap ends)',
    ),
    Mistake("3' r18 -90\"", "line 1, column 8: change of split -90 is below -40 seconds"),
    Mistake(
        "3' r18 -2",
        'line 1, column 8: cannot read "-2" here (it could be: a rate such as r20; a pressure: light, half, three-quarter, full or race; a split such as @1:55; an offset from the 2 km split such as 2k+1)',
    ),
    Mistake("3' r18 900% power", "line 1, column 8: share of 2 km power 9 is above 3"),
    Mistake("3' r18 5% power", "line 1, column 8: share of 2 km power 0.05 is below 0.1"),
    Mistake("3' r18 effort 11", "line 1, column 8: effort on the 0 to 10 scale 11 is above 10"),
    Mistake("3' r18 effort 6.3", "line 1, column 8: effort on the 0 to 10 scale 6.3 is not in steps of 0.5"),
    Mistake(
        "3' r18 effort",
        'line 1, column 8: cannot read "effort" here (it could be: a rate such as r20; a pressure: light, half, three-quarter, full or race; a split such as @1:55; an offset from the 2 km split such as 2k+1)',
    ),
    Mistake(
        "3' r18 hr",
        'line 1, column 8: cannot read "hr" here (it could be: a rate such as r20; a pressure: light, half, three-quarter, full or race; a split such as @1:55; an offset from the 2 km split such as 2k+1)',
    ),
    Mistake("3' r18 hr 20", "line 1, column 8: heart rate 20 is below 40 beats a minute"),
    Mistake("3' r18 hr 300", "line 1, column 8: heart rate 300 is above 230 beats a minute"),
    Mistake("3' r18 hr 10% max", "line 1, column 8: share of heart rate 10 is below 20 percent"),
    Mistake("3 x (", "line 1, column 1: this bracket is never closed: add a line with )"),
    Mistake("3 x (\n)", "line 2, column 1: the bracket opened on line 1 is empty"),
    Mistake("3 x (\n3' r18 light", "line 1, column 1: this bracket is never closed: add a line with )"),
    Mistake(")", "line 1, column 1: this bracket closes nothing: open a repeat first, such as 3 x ("),
    Mistake("3' r18 light)", 'line 1, column 13: cannot read ")" here (nothing more fits on this line)'),
    Mistake(
        "10x",
        "line 1, column 4: the line ends too early (it could be: a length of time such as 3', 50\" or 1'30\"; a distance such as 500m or 2 km; a number of strokes such as 20 strokes; open, for a block that a tap ends)",
    ),
    Mistake("0 x 3' r18", "line 1, column 1: repetitions 0 is below 1 times"),
    Mistake("101 x 3' r18", "line 1, column 1: repetitions 101 is above 100 times"),
    Mistake("1000000000 x 3' r18 light", "line 1, column 1: repetitions 1000000000 is above 100 times"),
    Mistake(
        "6 x 700m r28 /",
        "line 1, column 15: the line ends too early (it could be: a length of time such as 3', 50\" or 1'30\"; a distance such as 500m or 2 km; a number of strokes such as 20 strokes; open, for a block that a tap ends)",
    ),
    Mistake(
        "6 x 700m r28 3' rest",
        'line 1, column 14: cannot read "3\'" here (it could be: a rate such as r20; a pressure: light, half, three-quarter, full or race; a split such as @1:55; an offset from the 2 km split such as 2k+1)',
    ),
    Mistake(
        "3 x (10 strokes r28 full, )",
        'line 1, column 27: cannot read ")" here (it could be: a length of time such as 3\', 50" or 1\'30"; a distance such as 500m or 2 km; a number of strokes such as 20 strokes; open, for a block that a tap ends)',
    ),
    Mistake(
        "3 x (10 strokes r28 full",
        "line 1, column 25: the line ends too early (it could be: a comma and the next block of the group; a closing bracket)",
    ),
    Mistake(
        '3 x (10 strokes r28 full 50" r20 light)',
        'line 1, column 26: cannot read "50"" here (it could be: a rate such as r20; a pressure: light, half, three-quarter, full or race; a split such as @1:55; an offset from the 2 km split such as 2k+1)',
    ),
    Mistake("focus: long arms", "line 1, column 1: focus belongs below a block: write the block first"),
    Mistake("call: now", "line 1, column 1: call belongs below a block: write the block first"),
    Mistake("drill: feet out", "line 1, column 1: drill belongs below a block: write the block first"),
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
        'line 1, column 1: cannot read "warm": did you mean "warm-up"? (it could be: a length of time such as 3\', 50" or 1\'30"; a distance such as 500m or 2 km; a number of strokes such as 20 strokes; open, for a block that a tap ends)',
    ),
    Mistake("title: A\ntitle: B\n3' r18", "line 2, column 1: a second title: a plan has one"),
    Mistake("title:\n3' r18", "line 1, column 7: the text is empty: write something or leave it out"),
    Mistake(
        "title: long long long long long long long long long long long long long long long long long long long long \n3' r18 light",
        "line 1, column 8: a text of 99 characters is longer than 80",
    ),
    Mistake(
        "title: hid\u202eden\n3' r18",
        "line 1, column 8: the text holds U+202E, which cannot be shown: leave it out",
    ),
    Mistake(
        "title: AㅤB\n3' r18", "line 1, column 8: the text holds U+3164, which cannot be shown: leave it out"
    ),
    Mistake("3' r18 light\nfocus:", "line 2, column 7: the text is empty: write something or leave it out"),
    Mistake(
        "3' r18 light\nfocus: a\nfocus: b", "line 3, column 1: a second focus for one block: a block has one"
    ),
    Mistake(
        "3' r18 light\ndrill: a\ndrill: b", "line 3, column 1: a second drill for one block: a block has one"
    ),
    Mistake("3' r18 light\ncall at 0: now", "line 2, column 9: strokes 0 is below 1 strokes"),
    Mistake("3' r18 light\ncall last 9999: now", "line 2, column 11: strokes 9999 is above 2000 strokes"),
    Mistake(
        "open r20 light\ncall last 5: now", "line 2, column 6: an open block has no last strokes: use call at"
    ),
    Mistake(
        "3' r18 light\nsetting: 4",
        "line 2, column 1: a setting is written setting: lever 4 or setting: drag factor 120",
    ),
    Mistake("3' r18 light\nsetting: lever 14", "line 2, column 16: lever 14 is above 10"),
    Mistake("setting: drag factor 900\n3' r18", "line 1, column 22: drag factor 900 is above 250"),
    Mistake("gap", "line 1, column 4: a gap needs a length of time, such as gap 5'"),
    Mistake("gap soon", "line 1, column 5: a gap needs a length of time, such as gap 5'"),
    Mistake("3' r18 light\ngap 5 metres", "line 2, column 5: a gap needs a length of time, such as gap 5'"),
    Mistake(
        'each side 20" swap 10" r18 light',
        "line 1, column 1: a length by sides needs a line below it that names the drill, such as drill: one foot",
    ),
    Mistake(
        'each side 2" r18 light\ndrill: one foot', "line 1, column 1: time on a side 2 is below 5 seconds"
    ),
    Mistake(
        'each side 20" swap 90" r18\ndrill: one foot', "line 1, column 1: time to swap 90 is above 60 seconds"
    ),
    Mistake(
        "each side r18 light",
        'line 1, column 1: cannot read "each": did you mean "each side"? (it could be: a length of time such as 3\', 50" or 1\'30"; a distance such as 500m or 2 km; a number of strokes such as 20 strokes; open, for a block that a tap ends)',
    ),
    Mistake(
        '3 x (10 strokes r28 full, 50" r20 light)\nfocus: which',
        "line 2, column 1: focus needs one block above it: give each block of the group a line",
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
        "line 1, column 5: the line ends too early (it could be: a length of time such as 3', 50\" or 1'30\")",
    ),
    Mistake("5' rest r20", 'line 1, column 9: cannot read "r20" here (nothing more fits on this line)'),
    Mistake(
        "hello",
        'line 1, column 1: cannot read "hello" here (it could be: a length of time such as 3\', 50" or 1\'30"; a distance such as 500m or 2 km; a number of strokes such as 20 strokes; open, for a block that a tap ends)',
    ),
    Mistake(
        "3' light r18 please",
        'line 1, column 14: cannot read "please" here (it could be: a rate such as r20; a pressure: light, half, three-quarter, full or race; a split such as @1:55; an offset from the 2 km split such as 2k+1)',
    ),
    Mistake(
        "light 3'",
        'line 1, column 1: cannot read "light" here (it could be: a length of time such as 3\', 50" or 1\'30"; a distance such as 500m or 2 km; a number of strokes such as 20 strokes; open, for a block that a tap ends)',
    ),
    Mistake(
        "🙂",
        'line 1, column 1: cannot read "🙂" here (it could be: a length of time such as 3\', 50" or 1\'30"; a distance such as 500m or 2 km; a number of strokes such as 20 strokes; open, for a block that a tap ends)',
    ),
)
