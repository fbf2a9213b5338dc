using System.Globalization;
using System.Text;
using TheoryKit.Licks.Tab;
using TheoryKit.Licks.Tab.Options;
using TheoryKit.Licks.Tab.Remarks;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Licks.Tests.Tab;

/// <summary>
/// Mutated tabs and licks: each is read, or refused with a place inside the text; what is read writes a tab that reads back to it. The
/// variable THEORYKIT_FUZZ says how many of each there are.
/// </summary>
public class TabFuzzTests
{
    private const string Odd =
        "--------||||==  \n\n\r\t0123456789hpbrst/\\~^xX()<>[].:*>&+earqwEABGD#'\"eT_\u2500\u2502\u00bd\u266d\u0301\ud834\ud800\0";

    private static readonly string[] Pieces =
    [
        "x3",
        "(x2)",
        "x99999999999",
        ":|",
        "|:",
        "||",
        "7b9r7",
        "pb9",
        "tr",
        "let ring---|",
        "PM----|",
        "q. e3 (5/7) rh",
        "(1/99999999999)",
        "1 & 2 & 3 &",
        "Gm9  C13",
        "N.C.",
        "end",
        "fingers",
        "notes 2",
        "D|------|",
        "\n\n",
        "(E2 A2 D3 G3 B3 E4, 3/4)",
        "time: 3/4\n",
        "beats: 3\n",
        "neck: G4 C4 E4 A4\n",
    ];

    private static int Count(int usual) =>
        int.TryParse(
            Environment.GetEnvironmentVariable("THEORYKIT_FUZZ"),
            NumberStyles.None,
            CultureInfo.InvariantCulture,
            out var count
        )
            ? count
            : usual;

    [Fact]
    public void Any_tab_is_read_or_refused_at_a_place_inside_it()
    {
        TabReadOptions[] options =
        [
            new(),
            new(),
            new() { Neck = Neck.Guitar.WithCapo(2), Timing = TabTiming.Spacing },
            new() { Changes = Changes.Parse("3/4: Ebmaj7 | Cm7"), Timing = TabTiming.Even },
            new() { Neck = Neck.Parse("G4@5 C3 G3 B3 D4, 670 mm, 22 frets") },
        ];
        var seeds = TypedTab.All.Select(static tab => tab.Text).Concat(Written()).ToArray();
        Assert.InRange(
            Mutated(seeds, 100_000, (text, random) => ReadsTab(text, options[random.Next(options.Length)])),
            0.2,
            0.99
        );
    }

    [Fact]
    public void Any_lick_is_read_and_written_to_the_byte_or_refused_at_a_place_inside_it()
    {
        var licks = new List<string>();
        TabGens.Lick.Sample(lick => licks.Add(lick.ToString()), iter: 40, threads: 1, seed: "0000KxYjqkc0");
        Assert.InRange(Mutated([.. licks], 20_000, static (text, _) => ReadsLick(text)), 0.05, 0.99);
    }

    private static List<string> Written()
    {
        var texts = new List<string>();
        TabGens.Path.Sample(path => texts.Add(PlainTab.Write(path)), iter: 20, threads: 1, seed: "0000KxYjqkc0");
        return texts;
    }

    /// <summary>The part of the texts that is read.</summary>
    private static double Mutated(string[] seeds, int usual, Func<string, Random, bool> reads)
    {
        var (total, read) = (Count(usual), 0);
        Parallel.For(
            0,
            (total + 999) / 1000,
            chunk =>
            {
                var random = new Random(chunk);
                for (var index = 0; index < 1000; index++)
                {
                    var text = Mutate(random, seeds);
                    try
                    {
                        Interlocked.Add(ref read, reads(text, random) ? 1 : 0);
                    }
                    catch (Exception exception) when (exception is not Xunit.Sdk.XunitException)
                    {
                        Assert.Fail($"{exception}\non\n{text}");
                    }
                }
            }
        );
        return (double)read / ((total + 999) / 1000 * 1000);
    }

    private static bool ReadsTab(string text, TabReadOptions options)
    {
        TabReading reading;
        try
        {
            reading = PlainTab.Read(text, options);
        }
        catch (PlacedFormatException exception)
        {
            IsInside(text, exception.Line, exception.Column, exception.Length);
            Assert.Contains("expected", exception.Message, StringComparison.Ordinal);
            return false;
        }

        foreach (var remark in reading.Remarks)
        {
            IsInside(text, remark.Line, remark.Column, remark.Length);
        }

        var path = reading.Path;
        var written = PlainTab.Write(path);
        var again = PlainTab.Read(
            written,
            new()
            {
                Neck = path.Neck,
                Time = path.Time,
                Changes = path.Changes,
            }
        );
        TabRoundTripTests.Same(path, again.Path, $"{text}\n====\n{written}");
        // What leads the wrong way is kept, and told of each time.
        Assert.True(
            again.Remarks.All(static remark => remark is TabRemark.WrongWay),
            $"{string.Join('\n', again.Remarks)}\n{text}\n====\n{written}"
        );
        return true;
    }

    private static bool ReadsLick(string text)
    {
        Lick lick;
        try
        {
            lick = Lick.Parse(text);
        }
        catch (PlacedFormatException exception)
        {
            IsInside(text, exception.Line, exception.Column, exception.Length);
            return false;
        }

        Assert.Equal(text, lick.ToString());
        var slower = lick with { Tempo = 61.5, Tune = "Copper Weather" };
        Assert.Equal(slower, Lick.Parse(slower.ToString()));
        var anew = lick with { Path = lick.Path.With(beats: lick.Path.Beats + lick.Path.Time.Beats) };
        Assert.True(anew.Equals(Lick.Parse(anew.ToString())), $"{text}\n====\n{anew}");
        return true;
    }

    private static void IsInside(string text, int line, int column, int length)
    {
        var lines = text.Split('\n');
        Assert.True(line >= 1 && line <= lines.Length, $"Line {line} of\n{text}");
        var width = lines[line - 1].Length;
        Assert.True(
            column >= 1 && column <= width + 1 && length >= 1 && column + length - 1 <= Math.Max(width, column),
            $"Line {line}, character {column}, {length} long of\n{text}"
        );
    }

    private static string Mutate(Random random, string[] seeds)
    {
        var text = new StringBuilder(seeds[random.Next(seeds.Length)]);
        for (var changes = random.Next(1, random.Next(4) == 0 ? 30 : 5); changes > 0; changes--)
        {
            var at = random.Next(text.Length + 1);
            switch (random.Next(text.Length == 0 ? 2 : 8))
            {
                case 0:
                    text.Insert(at, Odd[random.Next(Odd.Length)]);
                    break;
                case 1:
                    text.Insert(at, Pieces[random.Next(Pieces.Length)]);
                    break;
                case 2:
                    text[at % text.Length] = Odd[random.Next(Odd.Length)];
                    break;
                case 3:
                    text.Remove(at % text.Length, 1);
                    break;
                case 4:
                    text.Remove(at % text.Length, Math.Min(random.Next(1, 40), text.Length - (at % text.Length)));
                    break;
                case 5:
                    var from = at % text.Length;
                    text.Insert(
                        random.Next(text.Length),
                        text.ToString(from, Math.Min(random.Next(1, 60), text.Length - from))
                    );
                    break;
                case 6:
                    var other = seeds[random.Next(seeds.Length)];
                    text.Length = at;
                    text.Append(other.AsSpan(random.Next(other.Length + 1)));
                    break;
                default:
                    // The same line twice, or none of it.
                    var lines = text.ToString().Split('\n').ToList();
                    var line = random.Next(lines.Count);
                    if (random.Next(2) == 0)
                    {
                        lines.RemoveAt(line);
                    }
                    else
                    {
                        lines.Insert(random.Next(lines.Count), lines[line]);
                    }

                    text = new(string.Join('\n', lines));
                    break;
            }
        }

        return text.ToString();
    }
}
