using System.Text;
using Fractions;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Theory.Scales;

namespace TheoryKit.Tests.Theory.Progressions;

public class ChangesTests
{
    private const string KestrelStairs = "3/4, Eb major: Ebmaj7 | Cm7 | Fm7 | Bb7";
    private const string NineTinBoats = "F major: Gm9 | C13 | Fmaj9 | Dm7";

    [Fact]
    public void Text_round_trips() => Laws.RoundTrip(AnyOf.Changes);

    [Fact]
    public void Equal_when_written_alike() => Laws.Equality(AnyOf.Changes);

    [Fact]
    public void Null_is_refused() => Laws.Null<Changes>();

    [Fact]
    public void All_changes_read_back() =>
        AnyOf.Changes.Sample(
            changes =>
            {
                Assert.Equal(changes, Changes.Parse(changes.ToString()));
                Assert.Equal(changes, Changes.Parse(changes.ToString("P")));
                Assert.All(
                    NoteNaming.Known,
                    naming => Assert.Equal(changes, Changes.Parse(changes.ToString(null, naming), naming))
                );
            },
            iter: 1_000
        );

    [Fact]
    public void Every_bar_is_full_and_chords_follow_without_a_gap() =>
        AnyOf.Changes.Sample(changes =>
        {
            foreach (var bar in changes.Bars)
            {
                Assert.Equal(changes.Time.Beats, bar.Chords.Aggregate(Fraction.Zero, (sum, span) => sum + span.Length));
            }

            var end = Fraction.Zero;
            foreach (var span in changes.Chords)
            {
                Assert.Equal(end, span.Start);
                Assert.True(span.Length > Fraction.Zero);
                end = span.End;
            }

            Assert.Equal(changes.Bars.Count * changes.Time.Beats, changes.Beats);
            Assert.Equal(changes.Beats, end);
        });

    [Fact]
    public void At_every_beat_is_the_chord_that_a_search_from_the_start_finds() =>
        Gen.Select(AnyOf.Changes, Gen.Int[0, 999])
            .Sample(
                (changes, thousandths) =>
                {
                    var beat = new Fraction(thousandths * changes.Beats, 1000);
                    Assert.Equal(changes.Chords.Last(span => span.Start <= beat), changes.At(beat));
                }
            );

    [Fact]
    public void Beats_outside_are_refused()
    {
        var changes = Changes.Parse(KestrelStairs);
        Assert.Throws<ArgumentOutOfRangeException>(() => changes.At(-Fraction.One));
        Assert.Throws<ArgumentOutOfRangeException>(() => changes.At(12));
        Assert.Equal(Chord.Parse("Bb7"), changes.At(new Fraction(23, 2)).Chord);
    }

    [Fact]
    public void There_and_back_is_the_same() =>
        Gen.Select(AnyOf.Changes, Gen.Int[1, 7], Gen.Int[-2, 2])
            .Sample(
                (changes, number, alteration) =>
                {
                    var interval = new Degree(number, alteration).Interval;
                    Assert.Equal(changes, changes.Transpose(interval).Transpose(-interval));
                }
            );

    [Fact]
    public void Moved_to_another_key_the_numerals_stay() =>
        Gen.Select(AnyOf.Key, AnyOf.Key)
            .Sample(
                (from, to) =>
                {
                    var changes = Changes.FromRoman("ii7 | V7 | Imaj7 vi7 | V7/3rd/ii", from);
                    to = new(to.Tonic, from.IsMinor);
                    Assert.Equal(Changes.FromRoman("ii7 | V7 | Imaj7 vi7 | V7/3rd/ii", to), changes.InKey(to));
                    Assert.Equal(changes, Changes.Parse(changes.ToRoman()));
                }
            );

    [Theory]
    [InlineData(KestrelStairs, "3/4, Eb major: Imaj7 | vi7 | ii7 | V7")]
    [InlineData(NineTinBoats, "F major: ii9 | V13 | Imaj9 | vi7")]
    [InlineData("C minor: Dm7b5 G7b9 | Cm6 / / N.C. | Ab7/Gb", "C minor: iiø7 V7b9 | i6 / / N.C. | bVI7/b7th")]
    public void Tunes_have_their_numerals(string tune, string numerals)
    {
        var changes = Changes.Parse(tune);
        Assert.Equal(tune, changes.ToString());
        Assert.Equal(numerals, changes.ToRoman());
        Assert.Equal(changes, Changes.Parse(numerals));
        Assert.Equal(
            changes,
            Changes.FromRoman(
                numerals[(numerals.IndexOf(':', StringComparison.Ordinal) + 1)..],
                changes.Key!.Value,
                changes.Time
            )
        );
    }

    [Fact]
    public void A_tune_moves_to_another_key() =>
        Assert.Equal(
            "3/4, G major: Gmaj7 | Em7 | Am7 | D7",
            Changes.Parse(KestrelStairs).InKey(Key.Parse("G")).ToString()
        );

    [Theory]
    [InlineData("Fm7 Bb7", "Fm7 at 0 for 2; Bb7 at 2 for 2")]
    [InlineData("3/4: Fm7 Bb7", "Fm7 at 0 for 3/2; Bb7 at 3/2 for 3/2")]
    [InlineData("3/4: Fm7 / Bb7", "Fm7 at 0 for 2; Bb7 at 2 for 1")]
    [InlineData("Fm7 / / Bb7", "Fm7 at 0 for 3; Bb7 at 3 for 1")]
    [InlineData("Fm7 / / / / Bb7 / /", "Fm7 at 0 for 5/2; Bb7 at 5/2 for 3/2")]
    [InlineData("6/8: Fm7 Bb7", "Fm7 at 0 for 3; Bb7 at 3 for 3")]
    [InlineData("6/8: Fm7 / Bb7", "Fm7 at 0 for 4; Bb7 at 4 for 2")]
    [InlineData("A B C", "A at 0 for 4/3; B at 4/3 for 4/3; C at 8/3 for 4/3")]
    [InlineData("Cm7 | % | N.C.", "Cm7 at 0 for 4; Cm7 at 4 for 4; N.C. at 8 for 4")]
    [InlineData("2/4: |: A | B :| C", "A at 0 for 2; B at 2 for 2; A at 4 for 2; B at 6 for 2; C at 8 for 2")]
    public void Chords_share_a_bar_and_slashes_lengthen(string text, string spans) =>
        Assert.Equal(spans, string.Join("; ", Changes.Parse(text).Chords));

    [Theory]
    [InlineData("| Cm7 | Fm7 |", "Cm7 | Fm7")]
    [InlineData("Cm7 || Fm7 ||", "Cm7 | Fm7")]
    [InlineData("|Cm7|Fm7|", "Cm7 | Fm7")]
    [InlineData("Cm7 | Fm7 |\n| Bb7 | Eb |\n", "Cm7 | Fm7 | Bb7 | Eb")]
    [InlineData("Cm7 | Fm7\n\n Bb7 | Eb", "Cm7 | Fm7 | Bb7 | Eb")]
    [InlineData("Cm7 | Cm7 | NC | N.C.", "Cm7 | % | N.C. | %")]
    [InlineData("A:|B:|", "A | % | B | %")]
    [InlineData("|: A | B :|: C :|", "A | B | A | B | C | %")]
    [InlineData("|: A | B :||: C :| D", "A | B | A | B | C | % | D")]
    [InlineData("|: A :|\n|: B :|", "A | % | B | %")]
    [InlineData("A | |: B :|", "A | B | %")]
    [InlineData("eb minor, 12/8 : Ebm7", "12/8, Eb minor: Ebm7")]
    [InlineData("4/4: C / / /", "C")]
    [InlineData("C / F /", "C F")]
    [InlineData("Cm: i7 | bVI7 G7(b9, b13)", "C minor: Cm7 | Ab7 G7(b9,b13)")]
    public void Other_ways_of_writing_are_read(string text, string canonical) =>
        Assert.Equal(canonical, Changes.Parse(text).ToString());

    [Fact]
    public void In_German_the_tune_reads_as_German_players_write_it()
    {
        var changes = Changes.Parse(KestrelStairs);
        Assert.Equal("3/4, Es major: Esmaj7 | Cm7 | Fm7 | B7", changes.ToString(null, NoteNaming.German));
    }

    [Fact]
    public void Respelling_follows_the_key() =>
        Assert.Equal("Db major: Gb7 | Abm7", Changes.Parse("Db major: F#7 | G#m7").Respelled().ToString());

    [Fact]
    public void Bars_of_another_length_or_none_are_refused()
    {
        var bar = Bar.Of(4, Chord.Parse("C"));
        Assert.Throws<ArgumentException>(() => new Changes([bar], TimeSignature.Waltz));
        Assert.Throws<ArgumentException>(() => new Changes([]));
        Assert.Throws<ArgumentException>(() => new Bar([(null, new Fraction(1, 2))]));
        Assert.Throws<ArgumentException>(() => new Bar([]));
        Assert.Throws<ArgumentException>(() => new Bar([(null, 5), (null, -1)]));
        Assert.Throws<ArgumentException>(() =>
            new Bar([(null, new Fraction(1, 1009)), (null, new Fraction(1008, 1009))])
        );
    }

    [Fact]
    public void Any_text_gives_changes_or_says_where_it_fails() =>
        Fuzz.Parser<Changes>([
            KestrelStairs,
            NineTinBoats,
            "Ebmaj7 | Cm7 | Fm7 Bb7 | %",
            "3/4: Fm7 / Bb7 | N.C. | %",
            "|: C | Am7 :| F G7(b9, 13) |",
            "Eb major: ii7 | V7/3rd/ii / / Imaj7 | C[1 b2 5]/E",
        ]);

    [Fact]
    public void Complaints_say_what_would_have_worked()
    {
        var text = new StringBuilder();
        Add<NoteName>("H", "", "Bbx");
        Add<Pitch>("E", "E99");
        Add<Scale>("Eb", "Eb doran", "C [2 3]", "C [1 3");
        Add<ScaleType>("dorain", "");
        Add<Key>("Eb mixed", "H major", "Eb major x");
        Add<TimeSignature>("4", "0/4", "4/3", "3/4 x");
        Add<RomanNumeral>("", "IX", "iisus4", "ii7x", "V7/", "V7/V/3rd", "V/V/V/V/V");
        Add<Changes>(
            "",
            "Cm7 | | Fm7",
            "% | Cm7",
            "Cm7 | % Fm7",
            "/ Cm7",
            "Cm7 / Fm7",
            "3/4: C / / /",
            "3/4, Eb major Ebmaj7: Cm7",
            "3/4, 4/4: C",
            "3/0: C",
            "ii7 | V7",
            "Cm7 | Fmaj8 | C",
            "|: Cm7 | Fm7",
            "|: Cm7 |: Fm7 :|",
            "N.C.x | C",
            "Cm7 :"
        );
        Expectations.Matches(text.ToString(), "complaints-scales-keys-changes.txt");

        void Add<T>(params string[] texts)
            where T : ISpanParsable<T>
        {
            text.Append(typeof(T).Name).Append('\n');
            foreach (var bad in texts)
            {
                text.Append("  ").Append(Fuzz.Complaint<T>(bad)).Append('\n');
            }
        }
    }
}
