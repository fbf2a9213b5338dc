using System.Text;
using System.Xml.Linq;
using BenchmarkDotNet.Attributes;
using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Theory.Chords;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Benchmarks;

/// <summary>Drawing a neck with forty marks; to stay under 1 ms and 20,000 bytes.</summary>
[BenchmarkCategory("neck")]
public class NeckPictureBenchmarks
{
    private const int Marks = 40;

    private static readonly Neck Neck = Neck.Guitar;
    private static readonly List<Place> Places = [.. Neck.PlacesOf(Chord.Parse("C13b9")).Take(Marks)];

    /// <summary>How many bytes the picture has.</summary>
    public static int Size() => Encoding.UTF8.GetByteCount(NeckDrawing.Of(Neck, Places).Svg());

    [GlobalSetup]
    public void Check() =>
        Answers.MustAgree([Marks, Marks], [NeckDrawing.Of(Neck, Places).Marks.Length, Count(Plain(), "tone")]);

    [Benchmark(Baseline = true, Description = "neck, 40 marks: XElement")]
    public string Plain()
    {
        XNamespace svg = "http://www.w3.org/2000/svg";
        var root = new XElement(
            svg + "svg",
            new XAttribute("viewBox", "0 0 820 190"),
            new XAttribute("role", "img"),
            new XElement(svg + "title", $"{Places.Count} tones on a neck"),
            new XElement(
                svg + "desc",
                string.Join(
                    "; ",
                    Places.Select(place =>
                        $"string {place.Position.String} fret {place.Position.Fret}: {place.Pitch.Name}, {place.Function}"
                    )
                )
            ),
            new XElement(svg + "style", Look.Css)
        );
        root.Add(
            new XElement(
                svg + "rect",
                new XAttribute("x", 40),
                new XAttribute("y", 10),
                new XAttribute("width", 770),
                new XAttribute("height", 150),
                new XAttribute("class", "tk-fill-board")
            )
        );
        for (var fret = 0; fret <= Neck.Frets; fret++)
        {
            var x = X(fret);
            root.Add(
                new XElement(
                    svg + "line",
                    new XAttribute("x1", x),
                    new XAttribute("x2", x),
                    new XAttribute("y1", 10),
                    new XAttribute("y2", 160),
                    new XAttribute("class", "tk-line-line")
                )
            );
            root.Add(new XElement(svg + "text", new XAttribute("x", x), new XAttribute("y", 180), fret));
        }

        for (var number = 1; number <= Neck.StringCount; number++)
        {
            root.Add(
                new XElement(
                    svg + "line",
                    new XAttribute("x1", 40),
                    new XAttribute("x2", 810),
                    new XAttribute("y1", Y(number)),
                    new XAttribute("y2", Y(number)),
                    new XAttribute("class", "tk-line-line")
                )
            );
            root.Add(
                new XElement(
                    svg + "text",
                    new XAttribute("x", 10),
                    new XAttribute("y", Y(number)),
                    Neck.Tuning[number].Open.Name
                )
            );
        }

        foreach (var place in Places)
        {
            var (x, y) = (X(place.Position.Fret) - 10, Y(place.Position.String));
            var shape =
                ToneRoles.Of(place.Function) == ToneRole.Root
                    ? new XElement(
                        svg + "rect",
                        new XAttribute("x", x - 9),
                        new XAttribute("y", y - 9),
                        new XAttribute("width", 18),
                        new XAttribute("height", 18),
                        new XAttribute("rx", 4)
                    )
                    : new XElement(
                        svg + "circle",
                        new XAttribute("cx", x),
                        new XAttribute("cy", y),
                        new XAttribute("r", 10)
                    );
            shape.Add(new XAttribute("class", "tone " + Look.Of(ToneRoles.Of(place.Function)).FillClass));
            shape.Add(
                new XElement(
                    svg + "title",
                    $"{place.Pitch}, {place.Function}, string {place.Position.String}, fret {place.Position.Fret}"
                )
            );
            root.Add(shape);
        }

        root.Add(
            Labels("tk-lf", place => place.Function.ToString("P")),
            Labels("tk-ln", place => place.Pitch.Name.ToString("P"))
        );
        return root.ToString(SaveOptions.DisableFormatting);

        XElement Labels(string cssClass, Func<Place, string> label) =>
            new(
                svg + "g",
                new XAttribute("class", cssClass),
                Places.Select(place => new XElement(
                    svg + "text",
                    new XAttribute("x", X(place.Position.Fret) - 10),
                    new XAttribute("y", Y(place.Position.String) + 4),
                    label(place)
                ))
            );
    }

    [Benchmark(Description = "neck, 40 marks: Svg")]
    public string Picture() => NeckDrawing.Of(Neck, Places).Svg();

    private static double X(int fret) => Math.Round(60 + (Neck.FretDistance(fret) * 1.6), 2);

    private static double Y(int number) => 22 + ((number - 1) * 25);

    private static int Count(string text, string word) => text.Split($"\"{word} ").Length - 1;
}
