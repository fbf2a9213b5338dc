using TheoryKit.Theory;

namespace TheoryKit.Drawing;

/// <summary>What lies inside a chord, around it and next to it, as parts of its page.</summary>
internal static class RelationBlocks
{
    public static IEnumerable<Block> Of(Chord chord)
    {
        yield return AsSet(chord);
    }

    private static Block.Group AsSet(Chord chord)
    {
        var facts = Sets.Classes.Card(chord.PitchClasses.SetClass).Blocks.OfType<Block.Facts>().Single().List;
        return new Block.Group(
            new Block.Heading("As a set of pitch classes"),
            new Block.Facts([new Fact("prime form", Words.Of(chord.PitchClasses.SetClass)), .. facts])
        );
    }
}
