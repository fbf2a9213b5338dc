using TheoryKit.Licks.Tab.Remarks;
using TheoryKit.Paths;

namespace TheoryKit.Licks.Tab.Reading;

/// <summary>From the line of one string, bar by bar through all systems, to the numbers on it.</summary>
/// <param name="number">The string, from 1.</param>
/// <param name="frets">The highest number that is one fret; two digits beyond are two frets.</param>
/// <param name="isStrict">Whether the text says its time and so means each place exactly.</param>
/// <param name="holds">Whether = holds a note; else it is but the line.</param>
/// <param name="marks">Where the numbers go.</param>
/// <param name="remarks">What is ambiguous.</param>
internal sealed class TabScanner(
    int number,
    int frets,
    bool isStrict,
    bool holds,
    List<TabMark> marks,
    TabRemarks remarks
)
{
    // Brackets around a number, each a bit of a mask.
    private const string Opening = "([<{";
    private const string Closing = ")]>}";
    private static readonly int[] Masks = [1, 2, 4, 4];

    private TabCursor cursor = null!;
    private NoteSigns signs = null!;
    private TabBar bar = null!;

    // Whether the character before belongs to the number before, and whether that is held up to here.
    private bool touches;
    private int? last;
    private readonly List<Technique> waiting = [];
    private char waitingSlide;

    /// <summary>What stands before a number.</summary>
    private readonly record struct Lead(IReadOnlyList<Technique> Techniques, char Slide, bool IsAttached)
    {
        public bool IsRelease => Techniques.Contains(Technique.Release);
    }

    /// <summary>Reads a bar.</summary>
    public void Read(TabLine line, TabBar inBar)
    {
        bar = inBar;
        cursor = new(line, bar.From, bar.To);
        signs = new(cursor, isStrict, remarks);
        while (!cursor.AtEnd)
        {
            switch (cursor.Here)
            {
                case '-' or ' ':
                    touches = false;
                    cursor.At++;
                    break;
                case '=':
                    cursor.At++;
                    touches &= holds;
                    if (touches)
                    {
                        Hold(cursor.At);
                    }

                    break;
                default:
                    ReadMark();
                    break;
            }
        }
    }

    private void Hold(int column)
    {
        if (last is { } index)
        {
            marks[index] = marks[index] with { HeldTo = (bar.Number, column) };
        }
    }

    private void ReadMark()
    {
        var from = cursor.At;
        if (ReadLead(touches && last is not null) is not { } lead)
        {
            return;
        }

        var core = cursor.At;
        if (lead.IsAttached && marks[last!.Value].HeldTo == (bar.Number, from))
        {
            // The sign before the number stands where it is still held.
            Hold(core);
        }

        var brackets = ReadBrackets();
        var afterBrackets = cursor.At;
        if (!cursor.AtEnd && cursor.Here is 'x' or 'X')
        {
            cursor.At++;
            var mark = NewMark(core, lead, brackets > 0).With(Technique.Dead);
            if (
                cursor.Is(cursor.At, '(')
                && cursor.FretAt(cursor.At + 1, out var fret, out var after)
                && cursor.Is(after, ')')
            )
            {
                mark = mark with { Number = fret };
                cursor.At = after + 1;
            }

            Finish(mark, brackets);
        }
        else if (cursor.IsDigit(cursor.At))
        {
            ReadNumbers(core, lead, brackets);
        }
        else if (lead.IsRelease && last is not null)
        {
            // Let go, to where the string was.
            cursor.At = core;
            Finish(NewMark(Math.Max(from, core - 1), lead, false), 0, core);
        }
        else if (core > from)
        {
            // Signs that no number follows wait for the next one on the string.
            cursor.At = core;
            touches = false;
            waiting.AddRange(lead.Techniques);
            waitingSlide = lead.Slide == '\0' ? waitingSlide : lead.Slide;
        }
        else
        {
            // Brackets around nothing.
            touches = false;
            cursor.At = from;
            do
            {
                cursor.At++;
                PassOver(cursor.At - 1);
            } while (cursor.At < afterBrackets);
        }
    }

    private void PassOver(int from) =>
        remarks.Add(cursor.Line, from, cursor.At - from, new TabRemark.SignPassedOver(cursor.Taken(from)));

    /// <summary>The signs before a number; null if what stands here is none and was dealt with.</summary>
    private Lead? ReadLead(bool isAttached)
    {
        var (lead, slide, first) = (new List<Technique>(), '\0', cursor.At);
        for (; !cursor.AtEnd; cursor.At++)
        {
            var c = cursor.Here;
            switch (c)
            {
                case 'h' or 'H':
                    Add(Technique.HammerOn);
                    break;
                case 'p' or 'P':
                    Add(Technique.PullOff);
                    break;
                case 's' or 'S':
                    Add(Technique.Slide);
                    break;
                case 'r' or 'R':
                    Add(Technique.Release);
                    break;
                case 't' or 'T' when !cursor.Is(cursor.At + 1, 'r'):
                    Add(Technique.Tap);
                    break;
                case '/' or '\\':
                    if (cursor.At == first && isAttached && !cursor.Is(cursor.At + 1, c))
                    {
                        Add(Technique.Slide);
                    }
                    else if (slide == '\0')
                    {
                        slide = c;
                    }
                    else if (slide != c)
                    {
                        Add(SlideInto(slide));
                        slide = c;
                    }

                    break;
                case (>= '0' and <= '9') or 'x' or 'X' or '(' or '<' or '[' or '{':
                    return new(lead, slide, isAttached);
                default:
                    if (cursor.At > first)
                    {
                        return new(lead, slide, isAttached);
                    }

                    ReadOther();
                    return null;
            }
        }

        return new(lead, slide, isAttached);

        void Add(Technique technique)
        {
            if (!lead.Contains(technique))
            {
                lead.Add(technique);
            }
        }
    }

    private static Technique SlideInto(char sign) =>
        sign == '/' ? Technique.SlideInFromBelow : Technique.SlideInFromAbove;

    /// <summary>What is no number and belongs to none that follows.</summary>
    private void ReadOther()
    {
        var (from, c) = (cursor.At, cursor.Here);
        cursor.TakeSame();
        touches = false;
        if (c is '~' or 'v' or 'V' or 'w' && last is { } index)
        {
            marks[index] = marks[index].With(Technique.Vibrato);
        }
        else if (!(c is ':' or '*' or 'o' or 'O' && (from == bar.From || cursor.AtEnd)))
        {
            PassOver(from);
        }
    }

    private int ReadBrackets()
    {
        var mask = 0;
        while (cursor.At + 1 < cursor.End && MaskOf(cursor.Here, Opening) is var kind and > 0)
        {
            mask |= kind;
            cursor.At++;
        }

        return mask;
    }

    private static int MaskOf(char c, string kinds)
    {
        var index = kinds.IndexOf(c, StringComparison.Ordinal);
        return index < 0 ? 0 : Masks[index];
    }

    private void ReadNumbers(int core, Lead lead, int brackets)
    {
        var run = cursor.At;
        while (cursor.IsDigit(run))
        {
            run++;
        }

        var (first, from) = (cursor.At, core);
        while (cursor.At < run)
        {
            var digits = DigitsHere(run, lead.IsRelease ? TabCursor.HighestBent : frets);
            var mark = NewMark(from, lead, brackets > 0 && cursor.At == first) with
            {
                HasTwoDigits = digits == 2,
                Number = cursor.Number(digits),
            };
            cursor.At += digits;
            if (!isStrict && lead.IsRelease)
            {
                // In 7b(9)r(7) the brackets say that nothing is struck, which is so.
                brackets &= ~1;
                cursor.At += cursor.Is(cursor.At, ')') ? 1 : 0;
            }

            if (cursor.At < run)
            {
                // More digits than one fret has.
                Place(mark, brackets);
                (from, lead) = (cursor.At, new([], '\0', true));
                continue;
            }

            if (mark.Has(Technique.Release) && cursor.TakeHalf())
            {
                mark = mark with { IsHalf = true };
            }

            if (run - first > 1 && from != core)
            {
                remarks.Add(
                    cursor.Line,
                    first,
                    run - first,
                    run - first == 2
                        ? new TabRemark.DigitsApart(cursor[first] - '0', cursor[first + 1] - '0', frets)
                        : new TabRemark.ManyDigits(cursor.Line.Text[first..run], frets, mark.Number)
                );
            }

            Finish(mark, brackets);
        }
    }

    /// <summary>How many of the digits here make one fret.</summary>
    private int DigitsHere(int run, int highest) =>
        run - cursor.At >= 2 && cursor.Here != '0' && cursor.Number(2) <= highest ? 2 : 1;

    private TabMark NewMark(int from, Lead lead, bool isBracketed)
    {
        var mark = new TabMark(number, cursor.Line, from)
        {
            Techniques = lead.Techniques,
            IsAttached = lead.IsAttached,
            IsBracketed = isBracketed,
            Before = last,
        };
        mark = lead.Slide == '\0' ? mark : mark.With(SlideInto(lead.Slide));
        foreach (var technique in waiting)
        {
            mark = mark.With(technique);
        }

        mark = waitingSlide != '\0' && lead.Slide == '\0' ? mark.With(Technique.Slide) : mark;
        waiting.Clear();
        waitingSlide = '\0';
        return mark;
    }

    /// <summary>Brackets and signs after the number.</summary>
    private void Finish(TabMark mark, int brackets, int? from = null)
    {
        while (!cursor.AtEnd)
        {
            if (MaskOf(cursor.Here, Closing) is var closing && (brackets & closing) != 0)
            {
                brackets &= ~closing;
                mark = Enclosed(mark, closing);
                cursor.At++;
            }
            else if (!signs.Take(ref mark))
            {
                break;
            }
        }

        Place(mark, brackets, from);
    }

    private void Place(TabMark mark, int brackets, int? from = null)
    {
        if (mark.SlidesOn)
        {
            waiting.Add(Technique.Slide);
        }

        // A bracket that is not closed counts all the same.
        marks.Add(Enclosed(mark, brackets) with { Length = cursor.At - (from ?? mark.Column) });
        (touches, last) = (true, marks.Count - 1);
    }

    private static TabMark Enclosed(TabMark mark, int brackets)
    {
        mark = (brackets & 1) != 0 ? mark.With(Technique.Ghost) : mark;
        mark = (brackets & 2) != 0 ? mark.With(Technique.ArtificialHarmonic) : mark;
        return (brackets & 4) != 0 ? mark.With(Technique.NaturalHarmonic) : mark;
    }
}
