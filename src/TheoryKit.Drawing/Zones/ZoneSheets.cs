using System.Collections.Immutable;
using System.Globalization;
using TheoryKit.Drawing.Grips;
using TheoryKit.Drawing.Hands;
using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Fingering.Grips;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Words;
using TheoryKit.Fingering.Zones;
using TheoryKit.Theory.Chords;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Drawing.Zones;

/// <summary>What is said about zones, one at a time and together.</summary>
internal static class ZoneSheets
{
    /// <summary>The zones of a chord: map, table, grips.</summary>
    public static Sheet Zones(IEnumerable<Zone> zones)
    {
        var all = zones.ToList();
        if (all.Count == 0)
        {
            return new(
                new Block.Prose((zones as ZoneAnswer)?.Reason is { } reason ? Words.Said(reason.InWords) : "No zones.")
            );
        }

        var blocks = new List<Block>();
        foreach (var ofChord in all.GroupBy(static zone => (zone.Chord, zone.Neck)))
        {
            var map = new ZoneMap(ofChord);
            blocks.Add(
                new Block.Title(Words.Of(map.Chord), $"in {English.Count(map.Zones.Count, "zone")} up the neck")
            );
            blocks.Add(Map(map));
            blocks.Add(Table(map.Zones));
            blocks.AddRange(Grips(map.Zones));
        }

        return new(blocks);
    }

    /// <summary>The map of zones.</summary>
    public static Block Map(ZoneMap map) =>
        Neck(map.Drawing, (naming, format) => $"{map.Chord.ToString(format, naming)} in zones");

    /// <summary>The page of one zone.</summary>
    public static Sheet Page(ZonePage page)
    {
        var zone = page.Zone;
        var blocks = new List<Block>
        {
            new Block.Title(Words.Of(zone.Chord), $"{ZoneWords.Named(zone.Form)}, {ZoneWords.Frets(zone.Window)}"),
            GripAndShape(page),
            new Block.Facts(Facts(zone)),
        };
        if (page.ShowsTable)
        {
            blocks.Add(Tones(zone));
        }

        return new(blocks);
    }

    /// <summary>All twelve roots.</summary>
    public static Sheet Roots(RootSheet sheet)
    {
        var zone = sheet.Zone;
        var shapes = zone.AllRoots();
        // Up a fourth is up five semitones; five times five semitones is one.
        var step = sheet.Order == RootOrder.Fourths ? 5 : 1;
        var ordered = shapes
            .OrderBy(shape => Diatonic(step * (shape.Root.PitchClass - zone.Chord.Root.PitchClass)))
            .ToList();
        var blocks = new List<Block>
        {
            new Block.Title(
                Name(zone.Chord.Formula),
                $"over {English.Count(ordered.Count, "root")}, {ZoneWords.Frets(zone.Window)}, {(step == 5 ? "in fourths" : "in semitones")}"
            ),
            Necks(
                [
                    .. ordered.Select(shape =>
                        (
                            Drawing: Drawing(zone.Neck, shape, zone.Window)
                                .WithLabels(sheet.Labels)
                                .WithLeftHand(sheet.IsLeftHanded),
                            Title: RootTitle(shape)
                        )
                    ),
                ],
                "One window, every root"
            ),
        };
        if (ordered.Count < 12)
        {
            blocks.Add(
                new Block.Prose(
                    $"For {English.Count(12 - ordered.Count, "root")} this hand has no shape in the window."
                )
            );
        }

        return new(blocks);
    }

    /// <summary>One zone, several qualities.</summary>
    public static Sheet Across(ZoneAcrossQualities across)
    {
        var first = across.Zones[0];
        var home = first.Shape.Notes.Select(static note => note.Place.Pitch.MidiNumber).ToHashSet();
        var window = new Window(
            across.Zones.Min(static zone => zone.Window.First),
            across.Zones.Max(static zone => zone.Window.Last)
        );
        var blocks = new List<Block>
        {
            new Block.Title(
                Words.Join(", ", across.Zones.Select(static zone => zone.Chord)),
                $"{ZoneWords.Named(first.Form)}, {ZoneWords.Frets(window)}"
            ),
            Necks(
                [
                    .. across.Zones.Select(zone =>
                        (
                            Drawing: Drawing(zone.Neck, zone.Shape, window)
                                .WithEach(mark =>
                                    mark with
                                    {
                                        IsPale = zone != first && home.Contains(zone.Neck.MidiNumberAt(mark.Position)),
                                    }
                                )
                                .WithLabels(across.Labels)
                                .WithLeftHand(across.IsLeftHanded),
                            Title: Words.Of(zone.Chord)
                        )
                    ),
                ],
                "Shapes (small marks: held tones)"
            ),
        };
        var grips = across.Zones.Where(static zone => zone.Grip is not null).ToList();
        if (grips.Count > 0)
        {
            blocks.Add(
                GripBoxes.Of(
                    "Grips (small marks: held places)",
                    [
                        .. grips.Select(zone => new GripBox(
                            GripDrawing.Of(zone.Grip!) with
                            {
                                Labels = across.Labels,
                                IsLeftHanded = across.IsLeftHanded,
                                Against = zone == grips[0] ? null : grips[0].Grip!.Grip,
                            },
                            GripWords.Under(zone.Grip!)
                        )),
                    ]
                )
            );
        }

        if (across.Zones.Count > 1)
        {
            blocks.Add(
                new Block.Table(
                    $"What moves against {first.Chord}",
                    ["chord", "tones that move", "held", "frets"],
                    [
                        .. across
                            .Zones.Skip(1)
                            .Select(zone =>
                                (IReadOnlyList<Cell>)
                                    [
                                        Words.Of(zone.Chord),
                                        Moves(first.Chord, zone.Chord),
                                        Held(first.Chord, zone.Chord),
                                        $"{zone.Window}",
                                    ]
                            ),
                    ]
                )
            );
        }

        return new(blocks);
    }

    /// <summary>A shape on a window of its neck, with fingers.</summary>
    public static NeckDrawing Drawing(Neck neck, Shape shape, Window window) =>
        NeckDrawing
            .Of(
                neck,
                shape.Notes.Select(note => new Mark(note.Place)
                {
                    Role = ToneRoles.Of(note.Place.Function, shape.Formula),
                    Finger = (int?)note.Finger,
                })
            )
            .WithFrets(
                Math.Clamp(window.First, 0, Math.Max(1, window.Last)),
                Math.Clamp(Math.Max(window.Last, window.First + 2), 1, neck.Frets)
            );

    private static int Diatonic(int semitones) => ((semitones % 12) + 12) % 12;

    private static Words Name(Formula formula) =>
        ChordQuality.Find(formula) is { } quality ? Printed.Capital(quality.Name) : Words.Of(formula);

    private static Words RootTitle(Shape shape)
    {
        var chord = Words.Of(new Chord(shape.Root, shape.Formula));
        return shape.IsComplete ? chord : $"{chord}, without {Words.Join(", ", shape.Missing)}";
    }

    /// <summary>A row for each zone; without the trade's letters the frets name it.</summary>
    private static Block.Table Table(IReadOnlyList<Zone> zones)
    {
        var hasLetters = zones.Any(static zone => zone.Form.Letter is not null);
        var isComplete = zones.All(static zone => zone.Shape.IsComplete);
        return new(
            "The zones",
            [
                .. hasLetters ? new Column[] { "form" } : [],
                "frets",
                "roots on strings",
                new("tones", IsNumber: true),
                "from",
                "to",
                new("effort of a note", IsNumber: true),
                .. isComplete ? [] : new Column[] { "missing" },
            ],
            [
                .. zones.Select(zone =>
                    (IReadOnlyList<Cell>)
                        [
                            .. hasLetters ? new Cell[] { ZoneWords.Short(zone.Form).Replace(' ', '\u00a0') } : [],
                            $"{zone.Window}",
                            Strings(zone.Form),
                            zone.Shape.Notes.Count,
                            zone.Shape.Notes.Count == 0 ? "" : Words.Of(zone.Shape.Notes[0].Place.Pitch),
                            zone.Shape.Notes.Count == 0 ? "" : Words.Of(zone.Shape.Notes[^1].Place.Pitch),
                            zone.Shape.EffortPerNote.ToString("0.00", CultureInfo.InvariantCulture),
                            .. isComplete ? [] : new Cell[] { Words.Join(" ", zone.Shape.Missing) },
                        ]
                ),
            ]
        );
    }

    private static string Strings(Form form) =>
        string.Join(
            ", then ",
            new[] { form.Lower, form.Upper }
                .Where(static strings => strings.Count > 0)
                .Select(static strings => string.Join(" ", strings))
        );

    private static IEnumerable<Block> Grips(IReadOnlyList<Zone> zones)
    {
        var boxes = zones
            .Where(static zone => zone.Grip is not null)
            .Select(static zone => new GripBox(
                GripDrawing.Of(zone.Grip!) with
                {
                    Title = zone.Form.Letter is { } letter ? $"{letter} form" : $"frets {zone.Window}",
                },
                GripWords.Under(zone.Grip!)
            ))
            .ToList();
        if (boxes.Count > 0)
        {
            yield return GripBoxes.Of("The best grip of each zone", boxes);
        }

        if (boxes.Count < zones.Count)
        {
            var without = zones.Where(static zone => zone.Grip is null).Select(static zone => $"{zone.Window}");
            yield return new Block.Prose($"This hand can hold no grip at frets {English.List(without)}.");
        }
    }

    private static Block.Picture GripAndShape(ZonePage page)
    {
        var zone = page.Zone;
        var shape = Drawing(zone.Neck, zone.Shape, zone.Window).WithLabels(page.Labels).WithLeftHand(page.IsLeftHanded);
        var grip = zone.Grip is { } best
            ? new GripBox(
                GripDrawing.Of(best) with
                {
                    Labels = page.Labels,
                    IsLeftHanded = page.IsLeftHanded,
                    Title = "",
                },
                GripWords.Under(best)
            )
            : null;
        return new Block.Picture(
            (context, naming) =>
            {
                var named = shape.WithNaming(naming).WithTitle($"Shape of {zone.Chord.ToString("P", naming)}");
                return NeckFigure.Write(
                    "Grip and shape",
                    NeckFigure.Detail(named),
                    named.Offered,
                    page.Labels,
                    context,
                    html =>
                    {
                        html.Style(PairCss).Open("div", "tk-pair");
                        if (grip is not null)
                        {
                            GripBoxes.WriteBoxes(html, [grip], context, naming);
                        }

                        NeckFigure.WritePicture(html, named, context);
                        html.Close();
                    }
                );
            },
            naming =>
                (grip is null ? "" : GripBoxes.Text([grip], naming) + "\n")
                + shape.WithNaming(naming).WithTitle("Shape").ToString()
        );
    }

    private const string PairCss =
        ".tk-pair{grid-column:1/-1;display:flex;flex-wrap:wrap;gap:1em 1.6em;align-items:center;min-width:0}.tk-pair>*{min-width:0}";

    private static List<Fact> Facts(Zone zone)
    {
        var facts = new List<Fact>
        {
            new("form", (Words)$"{ZoneWords.Named(zone.Form)}: {ZoneWords.Roots(zone.Form)}"),
            new(
                "window",
                $"{ZoneWords.Frets(zone.Window)}: {Math.Round(ZoneWords.Spread(zone.Window, zone.Neck))}\u00a0mm from the first to the last"
            ),
            new(
                "shape",
                (Words)
                    $"{English.Count(zone.Shape.Notes.Count, "tone")}, {(zone.Shape.IsComplete ? "complete" : (Words)$"without {Words.Join(", ", zone.Shape.Missing)}")}, effort {zone.Shape.EffortPerNote.ToString("0.00", CultureInfo.InvariantCulture)} a note"
            ),
        };
        facts.Add(
            zone.Grip is { } grip
                ? new("grip", (Words)$"{Words.Join(", ", Said(grip))}")
                : new("grip", "none that this hand can hold here with all the tones asked")
        );
        facts.Add(
            new(
                "hand",
                (Words)
                    $"{HandValues.Name(zone.Hand)}: {HandValues.Millimetres(zone.Hand.IndexToLittle)} from index to little finger"
            )
        );
        return facts;
    }

    private static IEnumerable<Words> Said(ChordGrip grip)
    {
        yield return GripWords.Bass(grip);
        yield return GripWords.Spacing(grip.Spacing);
        if (grip.Missing.Count > 0)
        {
            yield return (Words)$"without {Words.Join(", ", grip.Missing)}";
        }

        if (grip.Doubled.Count > 0)
        {
            yield return (Words)$"{Words.Join(", ", grip.Doubled)} doubled";
        }

        yield return grip.Grip.IsMovable ? "movable" : "with open strings";
        yield return $"effort {GripWords.Effort(grip.Effort)}";
        if (grip.SoundsAs is { } other)
        {
            yield return (Words)$"sounds as {other}";
        }
    }

    private static Block.Table Tones(Zone zone)
    {
        var others = zone.Alternatives().ToLookup(static other => other.Note.Place.Position);
        return new(
            "Tones from the lowest up",
            [
                "note",
                "function",
                new("string", IsNumber: true),
                new("fret", IsNumber: true),
                new("finger", IsNumber: true),
                .. others.Count > 0 ? new Column[] { "or" } : [],
            ],
            [
                .. zone.Shape.Notes.Select(note =>
                    (IReadOnlyList<Cell>)
                        [
                            Words.Of(note.Place.Pitch),
                            new(Words.Of(note.Place.Function), ToneRoles.Of(note.Place.Function, zone.Chord.Formula)),
                            note.Place.Position.String,
                            note.Place.Position.Fret,
                            HandValues.Sign(note.Finger),
                            .. others.Count > 0
                                ? new Cell[]
                                {
                                    Words.Join(
                                        "; ",
                                        others[note.Place.Position].Select(other => ZoneWords.Alternative(other, zone))
                                    ),
                                }
                                : [],
                        ]
                ),
            ]
        );
    }

    private static Words Moves(Chord from, Chord to)
    {
        var moves = new List<Words>();
        foreach (var degree in to.Formula)
        {
            if (from.Formula.Contains(degree))
            {
                continue;
            }

            var before = from.Formula.WithNumber(degree.Number);
            moves.Add(
                before is { } was && !to.Formula.Contains(was)
                    ? (Words)$"{was} to {degree} ({from.Root + was.Interval} to {to.Root + degree.Interval})"
                    : (Words)$"adds {degree} ({to.Root + degree.Interval})"
            );
        }

        foreach (var degree in from.Formula)
        {
            if (!to.Formula.Contains(degree) && to.Formula.WithNumber(degree.Number) is null)
            {
                moves.Add((Words)$"leaves out {degree} ({from.Root + degree.Interval})");
            }
        }

        return moves.Count == 0 ? "nothing" : Words.Join(", ", moves);
    }

    private static Words Held(Chord from, Chord to)
    {
        var held = from.Formula.Where(to.Formula.Contains).ToList();
        return held.Count == 0 ? "nothing" : Words.Join("\u00a0", held);
    }

    private static Block.Picture Neck(NeckDrawing drawing, Func<IFormatProvider?, string, string> title) =>
        new(
            (context, naming) => NeckFigure.Write(drawing.WithNaming(naming).WithTitle(title(naming, "P")), context),
            naming => drawing.WithNaming(naming).WithTitle(title(naming, "G")).ToString()
        );

    /// <summary>Small necks side by side.</summary>
    public static Block.Picture Necks(ImmutableArray<(NeckDrawing Drawing, Words Title)> necks, string title) =>
        new(
            (context, naming) =>
                NeckFigure.Write(
                    [.. necks.Select(each => each.Drawing.WithNaming(naming).WithTitle(each.Title.Printed(naming)))],
                    title,
                    context
                ),
            naming =>
                $"{title}\n\n"
                + string.Join(
                    "\n\n",
                    necks.Select(each => each.Drawing.WithNaming(naming).WithTitle(each.Title.Plain(naming)).ToString())
                )
        );
}
