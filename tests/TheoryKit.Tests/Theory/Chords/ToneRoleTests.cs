using TheoryKit.Theory.Chords;

namespace TheoryKit.Tests.Theory.Chords;

public class ToneRoleTests
{
    /// <summary>What harmony teaching lets be added to a chord, as degrees; the rest clashes and wants to go on.</summary>
    [Theory]
    [InlineData("Cmaj7", "9 #11 13")]
    [InlineData("Cmaj9", "9 #11 13")]
    [InlineData("C7", "b9 9 #9 #11 b13 13")]
    [InlineData("C13", "b9 9 #9 #11 b13 13")]
    [InlineData("C7b9", "b9 #9 #11 b13 13")]
    [InlineData("C7#5", "b9 9 #9 #11")]
    [InlineData("C7b9#5", "b9 #9 #11")]
    [InlineData("C7alt", "b9 #9")]
    [InlineData("Cm7", "9 11 13")]
    [InlineData("Cm9", "9 11 13")]
    [InlineData("Cm7b5", "9 11 b13")]
    [InlineData("C6", "7 9 #11")]
    [InlineData("Cm6", "7 9 11")]
    [InlineData("Cdim7", "9 11 b13 7")]
    [InlineData("C7sus4", "9 13")]
    [InlineData("C", "b7 7 9 #11 13")]
    [InlineData("Cm", "b7 7 9 11 13")]
    [InlineData("C5", "b3 3 b7 7 9 13")]
    [InlineData("Cadd2", "b7 7 9 #11 13")]
    public void A_chord_takes_these_as_colour(string symbol, string colours)
    {
        var chord = Chord.Parse(symbol);
        var taken = Formula.Parse(colours).Select(static degree => degree.PitchClass).Order();
        var found = Enumerable
            .Range(0, 12)
            .Where(above =>
                ToneRoles.Over(chord.DegreeOf(chord.Spell(60 + above).Name), chord.Formula) == ToneRole.ColourTone
            );
        Assert.Equal(taken, found);
    }

    [Fact]
    public void A_tone_of_a_chord_is_chord_tone_or_colour_and_never_anything_else()
    {
        foreach (var quality in ChordQuality.Known)
        {
            foreach (var degree in quality.Formula)
            {
                var (over, own) = (ToneRoles.Over(degree, quality.Formula), ToneRoles.Of(degree, quality.Formula));
                Assert.Equal(own == ToneRole.Other ? ToneRole.ColourTone : own, over);
            }
        }
    }
}
