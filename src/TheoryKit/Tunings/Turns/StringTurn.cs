using TheoryKit.Theory.Notes;

namespace TheoryKit.Tunings.Turns;

/// <summary>Which way a string is turned.</summary>
public enum Turn
{
    /// <summary>It stays as it is.</summary>
    Leave,

    /// <summary>It is let down.</summary>
    Down,

    /// <summary>It is pulled up.</summary>
    Up,
}

/// <summary>What is done to one string when an instrument is retuned. The default value leaves string 0, which is none.</summary>
/// <param name="Number">The string.</param>
/// <param name="From">What it is tuned to before.</param>
/// <param name="To">What it is to be tuned to.</param>
/// <param name="Check">How the ear finds the new pitch on the strings that are right by then; null for a string that stays, or where
/// no string is right yet.</param>
public readonly record struct StringTurn(int Number, Pitch From, Pitch To, TuningCheck? Check = null)
{
    /// <summary>By how many semitones, up positive, down negative.</summary>
    public int Semitones => To.MidiNumber - From.MidiNumber;

    /// <summary>By how many cents of equal temperament, up positive, down negative.</summary>
    public int Cents => 100 * Semitones;

    /// <summary>Which way. A string that is only spelled otherwise (D#4, Eb4) stays.</summary>
    public Turn Direction =>
        Math.Sign(Semitones) switch
        {
            > 0 => Turn.Up,
            < 0 => Turn.Down,
            _ => Turn.Leave,
        };
}
