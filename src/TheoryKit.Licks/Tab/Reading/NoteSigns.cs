using TheoryKit.Licks.Tab.Remarks;
using TheoryKit.Paths;

namespace TheoryKit.Licks.Tab.Reading;

/// <summary>From the signs that stand after a number to what they make of it.</summary>
/// <param name="cursor">Where they stand.</param>
/// <param name="isStrict">Whether the text says its time and so means each place exactly.</param>
/// <param name="remarks">What is ambiguous.</param>
internal sealed class NoteSigns(TabCursor cursor, bool isStrict, TabRemarks remarks)
{
    /// <summary>Takes a sign; false where none stands here.</summary>
    public bool Take(ref TabMark mark)
    {
        var c = cursor.Here;
        switch (c)
        {
            case 'p' or 'P' when cursor.Is(cursor.At + 1, 'b') || cursor.Is(cursor.At + 1, 'B'):
                cursor.At += 2;
                mark = WithBend(mark.With(Technique.PreBend));
                return true;
            case 'b' or 'B' or '^':
                cursor.At++;
                mark = WithBend(mark.With(Technique.Bend));
                return true;
            case 't' or 'T' when cursor.Is(cursor.At + 1, 'r'):
                cursor.At += 2;
                mark = WithTrill(mark.With(Technique.Trill));
                return true;
            case '~' or 'v' or 'V' or 'w':
                cursor.TakeSame();
                mark = mark.With(Technique.Vibrato);
                return true;
            case '>':
                cursor.At++;
                mark = mark.With(Technique.Accent);
                return true;
            case '.':
                cursor.At++;
                mark = mark.With(Technique.Staccato);
                return true;
            case 'm':
                cursor.At++;
                mark = mark.With(Technique.PalmMute);
                return true;
            case '/' or '\\' when !LeadsOn(cursor.At + 1):
                cursor.At++;
                mark = WithSlide(mark, c);
                return true;
            default:
                return false;
        }
    }

    /// <summary>Whether a number, or a sign before one, follows at once.</summary>
    private bool LeadsOn(int column)
    {
        while (
            column < cursor.End && cursor[column] is 'h' or 'p' or 'r' or 't' or 's' or 'H' or 'P' or 'R' or 'T' or 'S'
        )
        {
            column++;
        }

        return column < cursor.End
            && (char.IsAsciiDigit(cursor[column]) || cursor[column] is 'x' or 'X' or '(' or '<' or '[' or '{');
    }

    private TabMark WithSlide(TabMark mark, char sign)
    {
        if (
            !isStrict
            && NextOnString() is { } next
            && mark.Number is { } here
            && (next > here) == (sign == '/')
            && next != here
        )
        {
            remarks.Add(cursor.Line, cursor.At - 1, 1, new TabRemark.SlideOverGap(sign, next));
            return mark with { SlidesOn = true };
        }

        return mark.With(sign == '/' ? Technique.SlideOutUp : Technique.SlideOutDown);
    }

    // The next number in the bar, if the line and nothing else stands between; near enough to belong together.
    private int? NextOnString()
    {
        const int Near = 12;
        var column = cursor.At;
        while (column < cursor.End && column - cursor.At < Near && cursor[column] == '-')
        {
            column++;
        }

        return column > cursor.At && column < cursor.End && cursor.FretAt(column, out var fret, out _) ? fret : null;
    }

    private TabMark WithTrill(TabMark mark)
    {
        var bracket = cursor.Is(cursor.At, '(') ? 1 : 0;
        if (
            !cursor.FretAt(cursor.At + bracket, out var fret, out var after) || (bracket == 1 && !cursor.Is(after, ')'))
        )
        {
            return mark;
        }

        cursor.At = after + bracket;
        return mark with { TrillNumber = fret };
    }

    /// <summary>The fret to which it is bent, or how far, in whole tones: 9, (9), 7.5, 1/2, full.</summary>
    private TabMark WithBend(TabMark mark)
    {
        var back = cursor.At;
        var isOpen = cursor.Is(back, '(');
        cursor.At += isOpen ? 1 : 0;
        if (Target(mark) is { } bent)
        {
            cursor.At += isOpen && cursor.Is(cursor.At, ')') ? 1 : 0;
            return bent;
        }

        cursor.At = back;
        if (mark.BendHalves is not null || mark.BendCents is not null)
        {
            return mark;
        }

        remarks.Add(cursor.Line, back - 1, 1, new TabRemark.BendUnsaid());
        return mark with { BendCents = 200 };
    }

    private TabMark? Target(TabMark mark)
    {
        if (cursor.Take("full") || cursor.Take("f"))
        {
            return mark with { BendCents = 200 };
        }

        if (cursor.FretAt(cursor.At, out var fret, out var after))
        {
            return To(mark, fret, after);
        }

        int? cents = cursor.AtEnd
            ? null
            : cursor.Here switch
            {
                '\u00bc' => 50,
                '\u00bd' => 100,
                '\u00be' => 150,
                _ => null,
            };
        cursor.At += cents is null ? 0 : 1;
        return cents is null ? null : mark with { BendCents = cents };
    }

    private TabMark To(TabMark mark, int fret, int after)
    {
        var here = mark.Number ?? 0;
        if (
            fret < here
            && cursor.Is(after, '/')
            && cursor.FretAt(after + 1, out var under, out var afterUnder)
            && under is 2 or 4
        )
        {
            cursor.At = afterUnder;
            return mark with { BendCents = fret * 200 / under };
        }

        var from = cursor.At;
        cursor.At = after;
        var isHalf = cursor.TakeHalf();
        if (!isHalf && cursor.Is(cursor.At, '.') && cursor.Is(cursor.At + 1, '0'))
        {
            cursor.At += 2;
        }

        var halves = (2 * fret) + (isHalf ? 1 : 0);
        if (halves >= 2 * here)
        {
            return mark with { BendHalves = halves };
        }

        var cents = halves * 50;
        remarks.Add(cursor.Line, from, cursor.At - from, new TabRemark.BendBy(fret, here, cents));
        return mark with { BendCents = cents, BendHalves = null };
    }
}
