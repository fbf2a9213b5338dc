using TheoryKit.Drawing.Rendering;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;

namespace TheoryKit.Drawing.Tests.Necks;

public class ToneRoleTests
{
    [Theory]
    [InlineData("1 3 5 7", "1", ToneRole.Root)]
    [InlineData("1 3 5 7", "7", ToneRole.ChordTone)]
    [InlineData("1 b3 b5 bb7", "bb7", ToneRole.ChordTone)]
    [InlineData("1 3 #5 b7", "#5", ToneRole.ChordTone)]
    [InlineData("1 3 5 b7 b9 #11 13", "b9", ToneRole.ColourTone)]
    [InlineData("1 3 5 b7 b9 #11 13", "#11", ToneRole.ColourTone)]
    [InlineData("1 3 5 b7 b9 #11 13", "13", ToneRole.ColourTone)]
    [InlineData("1 3 5 6", "6", ToneRole.ChordTone)]
    [InlineData("1 4 5 b7", "4", ToneRole.ChordTone)]
    [InlineData("1 2 5", "2", ToneRole.ChordTone)]
    [InlineData("1 2 3 4 5 6 7", "2", ToneRole.Other)]
    [InlineData("1 2 3 4 5 6 7", "4", ToneRole.Other)]
    [InlineData("1 2 3 4 5 6 7", "6", ToneRole.Other)]
    [InlineData("1 b3 4 b5 5 b7", "b5", ToneRole.Other)]
    public void A_degree_has_its_role_in_the_formula(string formula, string degree, ToneRole role) =>
        Assert.Equal(role, ToneRoles.Of(Degree.Parse(degree), Formula.Parse(formula)));

    [Fact]
    public void The_kinds_of_role_have_words_and_colours_of_their_own()
    {
        var roles = Enum.GetValues<ToneRole>();
        Assert.Equal(roles.Length, roles.Select(ToneRoles.Words).Distinct().Count());
        Assert.Equal(roles.Length, roles.Select(Look.Of).Distinct().Count());
    }
}
