using TheoryKit.Theory.Notes;

namespace TheoryKit.Tests.Theory.Notes;

public class NoteNamingTests
{
    public static TheoryData<string> Names => [.. NoteNaming.Known.Select(naming => naming.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_name_reads_back_in_every_language_and_every_case(string language)
    {
        var naming = Named(language);
        foreach (var note in All())
        {
            var text = note.ToString(null, naming);
            Assert.Equal(note, NoteName.Parse(text, naming));
            Assert.Equal(note, NoteName.Parse(note.ToString("P", naming), naming));
            Assert.Equal(note, NoteName.Parse(text.ToLowerInvariant(), naming));
            var pitch = new Pitch(note, 3);
            Assert.Equal(pitch, Pitch.Parse(pitch.ToString(null, naming), naming));
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void No_two_notes_share_a_name(string language)
    {
        var naming = Named(language);
        Assert.Distinct(All().Select(note => note.ToString(null, naming)));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Any_text_gives_a_name_or_says_where_it_fails(string language)
    {
        var naming = Named(language);
        Fuzz.Parser<NoteName>(NoteName.Common.Select(note => note.ToString(null, naming)), provider: naming);
    }

    [Theory]
    [InlineData("C Des D Es E F Ges G As A B H", "C Db D Eb E F Gb G Ab A Bb B")] // the keyboard in flats
    [InlineData("His Cis Dis Eis Fis Gis Ais", "B# C# D# E# F# G# A#")]
    [InlineData("Ceses Deses Eses Feses Geses Ases Heses", "Cbb Dbb Ebb Fbb Gbb Abb Bbb")]
    [InlineData("Cisis Fisis Eseses Aseses", "C## F## Ebbb Abbb")]
    public void German_names_are_those_of_the_schoolbook(string german, string english)
    {
        var notes = NoteName.ParseList(english);
        Assert.Equal(notes, NoteName.ParseList(german, NoteNaming.German));
        Assert.Equal(german, string.Join(' ', notes.Select(note => note.ToString(null, NoteNaming.German))));
    }

    [Theory]
    [InlineData("Hes", "Bb")]
    [InlineData("Bb", "Bb")]
    [InlineData("Asas", "Abb")]
    [InlineData("F#", "F#")]
    [InlineData("Eb", "Eb")]
    [InlineData("H♭", "Bb")]
    public void German_also_reads_what_chord_sheets_have(string german, string english) =>
        Assert.Equal(NoteName.Parse(english), NoteName.Parse(german, NoteNaming.German));

    [Theory]
    [InlineData("Bes")]
    [InlineData("B#")]
    [InlineData("Ces#")]
    [InlineData("Cises")]
    [InlineData("I")]
    public void German_refuses_what_could_be_two_notes(string text) =>
        Assert.False(NoteName.TryParse(text, NoteNaming.German, out _));

    [Theory]
    [InlineData("Do Re Mi Fa Sol La Si", "C D E F G A B")]
    [InlineData("Do# Reb Solb Sib Fa##", "C# Db Gb Bb F##")]
    public void Solfege_is_fixed_do(string solfege, string english)
    {
        var notes = NoteName.ParseList(english);
        Assert.Equal(notes, NoteName.ParseList(solfege, NoteNaming.Solfege));
        Assert.Equal(solfege, string.Join(' ', notes.Select(note => note.ToString(null, NoteNaming.Solfege))));
        Assert.Equal(
            notes,
            NoteName.ParseList(solfege.Replace("Re", "Ré", StringComparison.Ordinal), NoteNaming.Solfege)
        );
    }

    [Fact]
    public void A_shorter_name_is_found_when_the_longest_does_not_fit()
    {
        var text = "Asus4";
        Assert.True(NoteNaming.German.TryRead(text, out var note, out var length));
        Assert.Equal((new NoteName(Letter.A, -1), 2), (note, length));
        Assert.True(NoteNaming.German.TryRead(text.AsSpan(0, length - 1), out note, out length));
        Assert.Equal((new NoteName(Letter.A), 1), (note, length));
        Assert.False(NoteNaming.German.TryRead(text.AsSpan(0, length - 1), out _, out _));
    }

    [Fact]
    public void Without_a_naming_names_are_English() =>
        Assert.Equal(
            "Bb",
            new NoteName(Letter.B, -1).ToString(null, System.Globalization.CultureInfo.InvariantCulture)
        );

    private static NoteNaming Named(string name) => NoteNaming.Known.Single(naming => naming.Name == name);

    private static IEnumerable<NoteName> All() =>
        from letter in Enum.GetValues<Letter>()
        from alteration in Enumerable.Range(-NoteName.MaxAlteration, (2 * NoteName.MaxAlteration) + 1)
        select new NoteName(letter, alteration);
}
