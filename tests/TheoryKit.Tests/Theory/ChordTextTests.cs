using TheoryKit.Theory;

namespace TheoryKit.Tests.Theory;

public sealed class ChordTextTests
{
    [Fact]
    public void Every_known_quality_on_every_root_over_every_bass_reads_back()
    {
        foreach (var quality in ChordQuality.Known)
        {
            foreach (var root in NoteName.Common)
            {
                foreach (var bass in NoteName.Common)
                {
                    var chord = quality.On(root, bass);
                    Assert.Equal(chord, Chord.Parse(chord.ToString()));
                    Assert.Equal(chord, Chord.Parse(chord.ToString("P")));
                }
            }
        }
    }
}
