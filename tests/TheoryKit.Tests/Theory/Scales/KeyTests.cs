using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Scales;

namespace TheoryKit.Tests.Theory.Scales;

public class KeyTests
{
    private static readonly Gen<Key> AnyKey = Gen.Select(
        Gens.NoteName,
        Gen.Bool,
        (tonic, minor) => new Key(tonic, minor)
    );
    private static readonly Gen<Key> CommonKey = Gen.Select(
        AnyOf.Note,
        Gen.Bool,
        (tonic, minor) => new Key(tonic, minor)
    );

    [Theory]
    [InlineData("Cismoll", "C# minor")]
    [InlineData("cis-Moll", "C# minor")]
    [InlineData("a-moll", "A minor")]
    [InlineData("A-Dur", "A major")]
    [InlineData("As-Dur", "Ab major")]
    [InlineData("Es Dur", "Eb major")]
    [InlineData("B-Dur", "Bb major")]
    [InlineData("h-moll", "B minor")]
    [InlineData("asmoll", "Ab minor")]
    public void German_keys_are_read_in_German(string text, string key)
    {
        Assert.Equal(Key.Parse(key), Key.Parse(text, NoteNaming.German));
        Assert.False(Key.TryParse("A-Dur", null, out _));
    }

    [Fact]
    public void Text_round_trips() => Laws.RoundTrip(AnyKey);

    [Fact]
    public void Equal_when_written_alike() => Laws.Equality(AnyKey);

    [Fact]
    public void Null_is_refused() => Laws.Null<Key>();

    [Fact]
    public void Every_key_reads_back() =>
        AnyKey.Sample(key =>
            Key.Parse(key.ToString()) == key
            && Key.Parse(key.ToString("P")) == key
            && NoteNaming.Known.All(naming => Key.Parse(key.ToString(null, naming), naming) == key)
        );

    // The circle of fifths, walked on the keyboard: up seven keys adds one sharp, down seven one flat.
    [Theory]
    [InlineData("C G D A E B F# C#", "A E B F# C# G# D# A#", 1)]
    [InlineData("C F Bb Eb Ab Db Gb Cb", "A D G C F Bb Eb Ab", -1)]
    public void Signatures_go_round_the_circle_of_fifths(string majors, string minors, int direction)
    {
        var count = 0;
        foreach (var (major, minor) in NoteName.ParseList(majors).Zip(NoteName.ParseList(minors)))
        {
            Assert.Equal(direction * count, new Key(major).Signature);
            Assert.Equal(direction * count, new Key(minor, true).Signature);
            Assert.Equal((7 * direction * count % 12 + 12) % 12, major.PitchClass);
            Assert.Equal(new Key(minor, true), new Key(major).Relative);
            Assert.Equal(new Key(major), new Key(minor, true).Relative);
            count++;
        }
    }

    [Fact]
    public void Thirty_keys_are_printed() =>
        Assert.Equal(
            30,
            NoteName.Common.SelectMany(tonic => new Key[] { new(tonic), new(tonic, true) }).Count(key => key.IsPrinted)
        );

    // Counted on the tones of the scale instead of on the line of fifths.
    [Fact]
    public void The_signature_has_the_altered_tones_of_the_scale() =>
        CommonKey.Sample(key =>
        {
            var altered = key.Scale.Tones.Where(tone => tone.Alteration != 0).ToList();
            Assert.Equal(altered.ToHashSet(), [.. key.SignatureNotes]);
            Assert.Equal(key.Scale.Tones.Sum(tone => tone.Alteration), key.Signature);
        });

    [Theory]
    [InlineData("C# major", "F# C# G# D# A# E# B#")]
    [InlineData("Cb major", "Bb Eb Ab Db Gb Cb Fb")]
    [InlineData("C minor", "Bb Eb Ab")]
    [InlineData("E minor", "F#")]
    [InlineData("G# major", "F## C# G# D# A# E# B#")]
    [InlineData("A minor", "")]
    public void Signature_notes_enter_in_order(string key, string notes) =>
        Assert.Equal(notes, string.Join(' ', Key.Parse(key).SignatureNotes));

    [Theory]
    [InlineData("Eb", "Eb major")]
    [InlineData("c", "C major")]
    [InlineData("Cm", "C minor")]
    [InlineData("F# min", "F# minor")]
    [InlineData("bb maj", "Bb major")]
    [InlineData("B♭ major", "Bb major")]
    public void Short_forms_are_read(string text, string key) => Assert.Equal(key, Key.Parse(text).ToString());

    [Fact]
    public void Every_tone_of_the_scale_is_spelled_as_the_scale_has_it() =>
        CommonKey.Sample(key =>
        {
            Assert.All(key.Scale.Tones, tone => Assert.Equal(tone, key.NameOf(tone.PitchClass)));
            Assert.Equal(12, Enumerable.Range(0, 12).Select(key.NameOf).Distinct().Count());
            Assert.All(
                Enumerable.Range(-24, 48),
                number => Assert.Equal((number + 24) % 12, key.NameOf(number).PitchClass)
            );
            Assert.All(
                Enumerable.Range(0, 12).Select(key.NameOf),
                note => Assert.InRange(note.Fifths - key.Tonic.Fifths, -5, 6)
            );
        });

    [Theory]
    [InlineData("C major", "C Db D Eb E F F# G Ab A Bb B")]
    [InlineData("A minor", "C C# D D# E F F# G G# A Bb B")]
    public void Between_the_scale_spelling_is_the_harmonic_chromatic(string key, string names) =>
        Assert.Equal(names, string.Join(' ', Enumerable.Range(0, 12).Select(Key.Parse(key).NameOf)));

    [Fact]
    public void The_simplest_key_sounds_alike_with_at_most_six_in_the_signature() =>
        AnyKey.Sample(key =>
        {
            var simplest = key.Simplest();
            Assert.InRange(simplest.Signature, -6, 6);
            Assert.True(simplest.Tonic.IsEnharmonicTo(key.Tonic));
            Assert.Equal(key.IsMinor, simplest.IsMinor);
            Assert.Equal(simplest, simplest.Simplest());
        });

    [Fact]
    public void Any_text_gives_a_key_or_says_where_it_fails() =>
        Fuzz.Parser<Key>(["C", "Eb major", "F# minor", "Cm", "Bb maj", "G#min", "D M"]);
}
