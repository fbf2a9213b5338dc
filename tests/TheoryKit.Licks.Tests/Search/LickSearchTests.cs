using System.Text.RegularExpressions;
using TheoryKit.Licks.Folders;
using TheoryKit.Licks.Search;
using TheoryKit.Licks.Tests.Folders;
using TheoryKit.Paths;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;

namespace TheoryKit.Licks.Tests.Search;

public sealed class LickSearchTests : IDisposable
{
    private readonly string path = Directory.CreateTempSubdirectory("licks").FullName;
    private readonly LickFolder folder;

    public LickSearchTests()
    {
        folder = LickFolder.Open(path);
        folder.SaveAll(Enumerable.Range(0, 60).Select(static index => FolderGens.Make(index, $"Boats {index:00}")));
    }

    public void Dispose() => Directory.Delete(path, recursive: true);

    [Fact]
    public void A_search_finds_what_going_through_all_licks_finds()
    {
        var found = 0;
        LickQueryTests
            .Query.Select(FolderGens.OneOf("Boats 07", "Boats 20", "Boats 33"))
            .Sample(
                (query, like) =>
                {
                    query = new([
                        .. query.Criteria.Select(each =>
                            each is LickCriterion.Like one ? new LickCriterion.Like(like, one.Least)
                            : each is LickCriterion.Not { Inner: LickCriterion.Like other }
                                ? new LickCriterion.Not(new LickCriterion.Like(like, other.Least))
                            : each
                        ),
                    ]);
                    var answer = folder.Find(query);
                    var plain = folder.Licks.Where(kept => query.Criteria.All(each => Plain(kept.Lick, each)));
                    Assert.Equal(
                        plain.Select(static kept => kept.Lick.Name),
                        answer.Select(static each => each.Lick.Name).Order(StringComparer.Ordinal)
                    );
                    Assert.All(answer, each => Assert.Equal(query.Criteria.Count, each.Reasons.Count));
                    Assert.All(answer, static each => Assert.InRange(each.Score, 0, 1));
                    Assert.Equal(
                        answer
                            .OrderByDescending(static each => each.Score)
                            .ThenBy(static each => each.Lick.Name, StringComparer.Ordinal),
                        answer
                    );
                    Interlocked.Add(ref found, answer.Count);
                },
                iter: 3_000
            );
        Assert.True(found > 3_000, $"Only {found} licks were found in all: the queries ask too much.");
    }

    [Fact]
    public void Reasons_say_where_and_why()
    {
        folder.Save(
            Lick.Parse(
                """
                name: Third first
                tune: Nine Tin Boats
                changes: 4/4, F major: Gm9 | C13
                tempo: 96
                tags: slow

                e|---------------|---------------|
                B|-----3---6-----|-5---3---------|
                G|-3-------------|---------3~--3-|
                D|---------------|---------------|
                A|---------------|---------------|
                E|---------------|---------------|
                """
            )
        );
        var answer = folder.Find(
            "function:b3 strong:b3 technique:vibrato chord:m9 tag:SLOW tempo:90-100 tune:\"nine tin boats\" third bars:2 -technique:bend contour:up,down"
        );
        var only = Assert.Single(answer, static each => each.Lick.Name == "Third first");
        Assert.Equal(
            [
                new FoundReason.Functions(new LickCriterion.Function(new Degree(3, -1)), 1, 1, 1),
                new FoundReason.StrongBeat(new Degree(3, -1), 1, 1),
                new FoundReason.PlayedWith(Technique.Vibrato, 1, 2),
                new FoundReason.OverChord(Chord.Parse("Gm9")),
                new FoundReason.Tagged("slow"),
                new FoundReason.Counted(LickCriterion.Countable.Tempo, 96),
                new FoundReason.OfTune("Nine Tin Boats"),
                new FoundReason.Saying("third", TextPlace.Name, null),
                new FoundReason.Counted(LickCriterion.Countable.Bars, 2),
                new FoundReason.Not(new LickCriterion.PlayedWith(Technique.Bend)),
                new FoundReason.Shaped(new LickCriterion.Shaped(Direction.Up, Direction.Down)),
            ],
            only.Reasons
        );
        Assert.Equal(1, only.Score);
    }

    [Fact]
    public void What_is_like_a_lick_comes_by_likeness()
    {
        var lick = folder.Licks[10].Lick;
        folder.Save(LickLineTests.Moved(lick, 1) ?? LickLineTests.Moved(lick, -1)!);
        var answer = folder.Find($"like:\"{lick.Name}\"/10");
        Assert.Equal([lick.Name, $"{lick.Name} moved"], answer.Take(2).Select(static each => each.Lick.Name));
        Assert.Equal(new FoundReason.Alike(1), answer[1].Reasons[0]);
        Assert.Equal(answer.Count, folder.Find(LickQuery.All.AlikeTo(lick, 0.1)).Count);
        Assert.Throws<ArgumentException>(() => folder.Find("like:\"no such lick\""));
    }

    [Fact]
    public void A_search_knows_what_was_saved_after_the_one_before()
    {
        Assert.Empty(folder.Find("text:anchor"));
        folder.Save(FolderGens.Make(1, "Anchor"));
        Assert.Single(folder.Find("text:anchor"));
        folder.Delete("Anchor");
        Assert.Empty(folder.Find("text:anchor"));
        Assert.Equal(folder.Licks.Count, folder.Find("").Count);
    }

    [Fact]
    public void Duplicates_are_the_pairs_that_comparing_all_finds()
    {
        // Families of a lick, the same elsewhere on the neck, and the same with a note changed.
        var licks = Enumerable
            .Range(100, 12)
            .Select(static seed => FolderGens.Make(seed, $"Family {seed}"))
            .Where(static lick => lick.Path.Notes.Count >= 10)
            .ToList();
        foreach (var lick in licks)
        {
            folder.Save(LickLineTests.Moved(lick, 1) is { } up ? up : LickLineTests.Moved(lick, -1)!);
            folder.Save(lick);
            var last = lick.Path.Notes[^1];
            var notes = lick.Path.Notes.Take(lick.Path.Notes.Count - 1);
            folder.Save(lick with { Name = $"{lick.Name} without its end", Path = lick.Path.With(notes) });
        }

        var all = folder.Licks;
        var groups = folder.Duplicates(0.85);
        var expected = Clusters(all, 0.85);
        Assert.Equal(
            expected.Select(static names => string.Join("|", names)).Order(StringComparer.Ordinal),
            groups
                .Select(static group => string.Join("|", group.Licks.Select(static each => each.Lick.Name)))
                .Order(StringComparer.Ordinal)
        );
        Assert.True(groups.Count >= licks.Count - 2);
        Assert.Equal(groups.OrderByDescending(static group => group.Likeness), groups);

        // Only the same.
        var same = folder.Duplicates(1);
        Assert.All(same, static group => Assert.True(group.IsSame));
        Assert.Equal(
            Clusters(all, 1).Select(static names => string.Join("|", names)).Order(StringComparer.Ordinal),
            same.Select(static group => string.Join("|", group.Licks.Select(static each => each.Lick.Name)))
                .Order(StringComparer.Ordinal)
        );
        Assert.Throws<ArgumentOutOfRangeException>(() => folder.Duplicates(0));
    }

    /// <summary>Groups by comparing every two.</summary>
    private static List<List<string>> Clusters(IReadOnlyList<KeptLick> licks, double least)
    {
        var group = Enumerable.Range(0, licks.Count).ToArray();
        for (var a = 0; a < licks.Count; a++)
        {
            for (var b = 0; b < a; b++)
            {
                if (group[a] != group[b] && Likeness.Of(licks[a].Lick, licks[b].Lick).Value >= least)
                {
                    var (from, to) = (group[a], group[b]);
                    for (var index = 0; index < group.Length; index++)
                    {
                        group[index] = group[index] == from ? to : group[index];
                    }
                }
            }
        }

        return
        [
            .. Enumerable
                .Range(0, licks.Count)
                .GroupBy(index => group[index])
                .Where(static each => each.Count() > 1)
                .Select(each => each.Select(index => licks[index].Lick.Name).ToList()),
        ];
    }

    /// <summary>Whether a lick has it, straight from the words of the documentation.</summary>
    private static bool Plain(Lick lick, LickCriterion criterion)
    {
        var path = lick.Path;
        return criterion switch
        {
            LickCriterion.Not not => !Plain(lick, not.Inner),
            LickCriterion.Function function => Regex.IsMatch(
                string.Concat(
                    path.Notes.Where(static note => !note.Has(Technique.Dead))
                        .Select(note => $"<{path.FunctionOf(note)?.Simple}>")
                ),
                string.Concat(
                    function.Degrees.Select(static degree =>
                        degree is { } one ? $"<{Regex.Escape($"{one.Simple}")}>" : "(<[^>]*>)*"
                    )
                )
            ),
            LickCriterion.OnStrongBeat strong => path.Notes.Any(note =>
                !note.Has(Technique.Dead)
                && path.FunctionOf(note)?.Simple == strong.Degree.Simple
                && $"{(note.Start % path.Time.Beats).Reduce()} in {path.Time}" is "0 in 4/4" or "2 in 4/4" or "0 in 3/4"
            ),
            LickCriterion.PlayedWith played => path.Notes.Any(note => note.Techniques.Contains(played.Technique)),
            LickCriterion.OverChord over => Chords(path)
                .Any(chord =>
                    chord.ToString() == over.Chord.ToString()
                    || (over.Chord.Bass == over.Chord.Root && chord.Over(chord.Root) == over.Chord)
                ),
            LickCriterion.OverQuality over => Chords(path).Any(chord => chord.Formula == over.Formula),
            LickCriterion.Shaped shaped => LickLine.Of(lick).Contour.SequenceEqual(shaped.Shape)
                && path.Notes.Any(static note => !note.Has(Technique.Dead)),
            LickCriterion.Tagged tagged => lick.Tags.Contains(tagged.Tag, StringComparer.OrdinalIgnoreCase),
            LickCriterion.OfTune tune => lick.Tune.Contains(tune.Tune, StringComparison.OrdinalIgnoreCase),
            LickCriterion.Saying saying => new[] { lick.Name, lick.Tune, lick.Words }
                .Concat(lick.Tags)
                .Concat(lick.Headers.Select(static header => header.ToString()))
                .Any(text => text.Contains(saying.Text, StringComparison.OrdinalIgnoreCase)),
            LickCriterion.Between between => Number(lick, between.Measure) is { } number
                && !(number < between.Least)
                && !(number > between.Most),
            LickCriterion.AlikeTo alike => Likeness.Of(alike.Line, LickLine.Of(lick)).Value >= alike.Least,
            LickCriterion.Like like => Likeness.Of(FolderGens.Make(int.Parse(like.Name[^2..]), like.Name), lick).Value
                >= like.Least,
            LickCriterion.InTuning tuning => path.Neck.Tuning.Equals(tuning.Tuning),
            LickCriterion.OnNeck neck => path.Neck.Equals(neck.Neck),
            _ => throw new NotSupportedException($"{criterion}"),
        };
    }

    private static double? Number(Lick lick, LickCriterion.Countable measure) =>
        measure switch
        {
            LickCriterion.Countable.Tempo => lick.Tempo,
            LickCriterion.Countable.Bars => Math.Ceiling(lick.Path.Beats.ToDouble() / lick.Path.Time.Beats),
            _ => lick.Path.Notes.Count(static note => !note.Has(Technique.Dead)),
        };

    // Every sixteenth there is asked which chord it is.
    private static IEnumerable<Chord> Chords(TheoryKit.Paths.Path path)
    {
        for (var at = new Fractions.Fraction(0); at < path.Beats; at += new Fractions.Fraction(1, 4))
        {
            if (path.ChordAt(at) is { } chord)
            {
                yield return chord;
            }
        }
    }
}
