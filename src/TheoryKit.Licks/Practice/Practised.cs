using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using TheoryKit.Licks.Tab.Reading;
using TheoryKit.Values;

namespace TheoryKit.Licks.Practice;

/// <summary>A lick practised once: when, which, how fast, how it went. Equal when all of that agrees.</summary>
/// <remarks>
/// Text, a line of a <see cref="PracticeLog"/>: <c>2026-11-24 18:30 "Low tide turn" at 96: clean, the bend is still flat</c>; time, tempo
/// and note may be left out. In the name a quotation mark is written <c>\"</c> and a backslash <c>\\</c>.
/// </remarks>
[ReadAs(What)]
public sealed partial record Practised : ISpanParsable<Practised>
{
    internal const string What = "a line of a practice log";

    private readonly string lick = "";
    private readonly string note = "";
    private readonly double? tempo;
    private readonly TimeOnly? time;

    /// <summary>The day.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>The time of the day in whole minutes; null where it is not told.</summary>
    public TimeOnly? Time
    {
        get => time;
        init => time = value is { } told ? new(told.Hour, told.Minute) : null;
    }

    /// <summary>The name of the lick.</summary>
    /// <exception cref="ArgumentException">It is empty or not one line of text.</exception>
    public required string Lick
    {
        get => lick;
        init => lick = QuotedName.Checked(value, nameof(Lick));
    }

    /// <summary>Beats a minute, in hundredths, above 0 and at most <see cref="Lick.MaxTempo"/>; null where it is not told.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not such a number.</exception>
    public double? Tempo
    {
        get => tempo;
        init =>
            tempo = value is null or (>= 0.01 and <= Licks.Lick.MaxTempo)
                ? value is { } beats
                    ? Math.Round(beats, 2)
                    : null
                : throw new ArgumentOutOfRangeException(
                    nameof(Tempo),
                    value,
                    $"A tempo is 0.01 to {Licks.Lick.MaxTempo} beats a minute."
                );
    }

    /// <summary>How it went.</summary>
    public required Outcome Outcome
    {
        get;
        init => field = Check.NotNull(value, nameof(Outcome));
    }

    /// <summary>What is to be remembered; empty for nothing.</summary>
    /// <exception cref="ArgumentException">Not one line of text.</exception>
    public string Note
    {
        get => note;
        init => note = LickText.OneLine(value, nameof(Note));
    }

    /// <summary>The line, as <see cref="Parse(string, IFormatProvider?)"/> reads it.</summary>
    public override string ToString() =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{Date:yyyy-MM-dd}{(Time is null ? "" : " ")}{Time:HH:mm} {QuotedName.Write(Lick)}{(Tempo is null ? "" : " at ")}{Tempo:0.##}: {Outcome}{(Note.Length > 0 ? ", " : "")}{Note}"
        );

    internal static bool Read(ref TextCursor cursor, [MaybeNullWhen(false)] out Practised practised)
    {
        practised = null;
        if (!QuotedName.ReadDate(ref cursor, out var date))
        {
            return false;
        }

        cursor.SkipSpaces();
        TimeOnly? time = null;
        if (char.IsAsciiDigit(cursor.Current))
        {
            if (!ReadTime(ref cursor, out var told))
            {
                return false;
            }

            time = told;
            cursor.SkipSpaces();
        }

        return QuotedName.Read(ref cursor, out var name) && ReadRest(ref cursor, date, time, name, out practised);
    }

    /// <summary>What comes after the name.</summary>
    internal static bool ReadRest(
        ref TextCursor cursor,
        DateOnly date,
        TimeOnly? time,
        string name,
        [MaybeNullWhen(false)] out Practised practised
    )
    {
        practised = null;
        double? tempo = null;
        cursor.SkipSpaces();
        if (cursor.Take("at"))
        {
            if (!Measure.Read(ref cursor, 0.01, Licks.Lick.MaxTempo, out var beats))
            {
                return false;
            }

            tempo = beats;
            cursor.SkipSpaces();
        }

        if (!cursor.Take(':'))
        {
            return cursor.Fail(
                tempo is null
                    ? "\"at\" and a tempo, or a colon and how it went (as in: clean)"
                    : "a colon and how it went (as in: clean)"
            );
        }

        cursor.SkipSpaces();
        if (!Outcome.Read(ref cursor, out var outcome))
        {
            return false;
        }

        var note = "";
        var end = cursor.Position;
        cursor.SkipSpaces();
        if (cursor.Take(','))
        {
            if (!QuotedName.IsLine(ref cursor, cursor.Rest.TrimEnd().Length))
            {
                return false;
            }

            note = cursor.Rest.Trim().ToString();
            cursor.Position = cursor.Text.Length;
        }
        else
        {
            cursor.Position = end;
            if (!cursor.Rest.IsWhiteSpace())
            {
                return cursor.Fail("a comma and a note, or the end of the line");
            }
        }

        practised = new()
        {
            Date = date,
            Time = time,
            Lick = name,
            Tempo = tempo,
            Outcome = outcome,
            Note = note,
        };
        return true;
    }

    private static bool ReadTime(ref TextCursor cursor, out TimeOnly time)
    {
        time = default;
        var length = Math.Min(5, cursor.Rest.Length);
        if (
            !TimeOnly.TryParseExact(
                cursor.Rest[..length],
                "HH:mm",
                CultureInfo.InvariantCulture,
                DateTimeStyles.None,
                out time
            )
        )
        {
            return cursor.Fail("the time of the day (as in 18:30), or the lick's name in quotation marks");
        }

        cursor.Position += length;
        return true;
    }
}
