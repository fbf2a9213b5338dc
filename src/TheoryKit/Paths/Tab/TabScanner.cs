using System.Globalization;

namespace TheoryKit.Paths;

/// <summary>Reads the numbers and signs on the line of one string, through all systems.</summary>
/// <param name="number">The string, from 1.</param>
/// <param name="frets">The highest number that is one fret; two digits beyond are two frets.</param>
/// <param name="isStrict">Whether the text says its time and so means each place exactly.</param>
/// <param name="holds">Whether = holds a note; else it is but the line.</param>
/// <param name="remarks">What is ambiguous.</param>
internal sealed class TabScanner(int number, int frets, bool isStrict, bool holds, TabRemarks remarks)
{
    private const int HighestBent = Tunings.Position.MaxFret + (PathNote.MaxBend / 100);

    private TabLine line = null!;
    private string text = "";
    private int at;
    private int end;
    private TabTypedBar bar = null!;
    private Action<TabMark> found = null!;

    // Whether the character before belongs to the number before, and whether that is held up to here.
    private bool touches;
    private TabMark? last;
    private readonly List<Technique> waiting = [];
    private char waitingSlide;

    /// <summary>Reads a bar.</summary>
    public void Read(TabLine onLine, TabTypedBar inBar, Action<TabMark> add)
    {
        (line, text, bar, found) = (onLine, onLine.Text, inBar, add);
        (at, end) = (inBar.From, Math.Min(inBar.To, onLine.Text.Length));
        while (at < end)
        {
            var c = text[at];
            if (c is '-' or ' ')
            {
                touches = false;
                at++;
            }
            else if (c == '=')
            {
                at++;
                touches &= holds;
                if (touches && last is not null)
                {
                    last.HeldTo = (bar.Number, at);
                }
            }
            else
            {
                ReadMark();
            }
        }
    }

    private void ReadMark()
    {
        var from = at;
        var isAttached = touches && last is not null;
        if (!ReadLead(isAttached, out var lead, out var slide))
        {
            return;
        }

        var core = at;
        if (isAttached && last!.HeldTo == (bar.Number, from))
        {
            // The sign before the number stands where it is still held.
            last.HeldTo = (bar.Number, core);
        }

        var brackets = ReadBrackets();
        if (at < end && text[at] is 'x' or 'X')
        {
            at++;
            var mark = NewMark(core, lead, slide, isAttached, false, brackets > 0);
            mark.Add(Technique.Dead);
            if (!AtEnd && text[at] == '(' && TakeFret(at + 1, out var fret, out var after) && After(after, ')'))
            {
                mark.Number = fret;
                at = after + 1;
            }

            Finish(mark, core, brackets);
        }
        else if (at < end && char.IsAsciiDigit(text[at]))
        {
            ReadNumbers(core, lead, slide, isAttached, brackets);
        }
        else if (lead.Contains(Technique.Release) && last is not null)
        {
            // Let go, to where the string was.
            at = core;
            var mark = NewMark(Math.Max(from, core - 1), lead, slide, isAttached, false, false);
            Finish(mark, core, 0);
        }
        else
        {
            at = core;
            Dangling(from, lead, slide);
        }
    }

    private bool AtEnd => at >= end;

    private bool After(int index, char c) => index < end && text[index] == c;

    /// <summary>The signs before a number; false if what stands here is none and was dealt with.</summary>
    private bool ReadLead(bool isAttached, out List<Technique> lead, out char slide)
    {
        (lead, slide) = ([], '\0');
        var first = at;
        while (!AtEnd)
        {
            switch (text[at])
            {
                case 'h' or 'H':
                    lead.Add(Technique.HammerOn);
                    break;
                case 'p' or 'P':
                    lead.Add(Technique.PullOff);
                    break;
                case 's' or 'S':
                    lead.Add(Technique.Slide);
                    break;
                case 'r' or 'R':
                    lead.Add(Technique.Release);
                    break;
                case 't' or 'T' when !After(at + 1, 'r'):
                    lead.Add(Technique.Tap);
                    break;
                case '/' or '\\':
                    if (at == first && isAttached && !After(at + 1, text[at]))
                    {
                        lead.Add(Technique.Slide);
                    }
                    else if (slide == '\0')
                    {
                        slide = text[at];
                    }
                    else if (slide != text[at])
                    {
                        lead.Add(slide == '/' ? Technique.SlideInFromBelow : Technique.SlideInFromAbove);
                        slide = text[at];
                    }

                    break;
                case >= '0' and <= '9':
                case 'x' or 'X' or '(' or '<' or '[' or '{':
                    return true;
                default:
                    if (at > first)
                    {
                        return true;
                    }

                    ReadOther();
                    return false;
            }

            at++;
        }

        return true;
    }

    /// <summary>What is no number and belongs to none that follows.</summary>
    private void ReadOther()
    {
        var from = at;
        var c = text[at];
        while (!AtEnd && text[at] == c)
        {
            at++;
        }

        switch (c)
        {
            case '~' or 'v' or 'V' or 'w' when last is not null:
                last.Add(Technique.Vibrato);
                touches = false;
                return;
            case ':' or '*' or 'o' or 'O' when from == bar.From || at == end:
                touches = false;
                return;
            default:
                touches = false;
                remarks.Add(line, from, at - from, $"\"{text[from..at]}\" says nothing on a string; passed over.");
                return;
        }
    }

    /// <summary>Signs that no number follows: they wait for the next one on the string.</summary>
    private void Dangling(int from, List<Technique> lead, char slide)
    {
        touches = false;
        if (at == from)
        {
            at++;
            remarks.Add(line, from, 1, $"\"{text[from]}\" says nothing on a string; passed over.");
            return;
        }

        waiting.AddRange(lead);
        if (slide != '\0')
        {
            waitingSlide = slide;
        }
    }

    private int ReadBrackets()
    {
        var mask = 0;
        while (!AtEnd && BracketOf(text[at], "([<{") is var kind && kind > 0 && at + 1 < end)
        {
            mask |= kind;
            at++;
        }

        return mask;
    }

    private static int BracketOf(char c, string kinds)
    {
        var index = kinds.IndexOf(c, StringComparison.Ordinal);
        return index < 0 ? 0
            : index == 3 ? 4
            : 1 << index;
    }

    private void ReadNumbers(int core, List<Technique> lead, char slide, bool isAttached, int brackets)
    {
        var run = at;
        while (run < end && char.IsAsciiDigit(text[run]))
        {
            run++;
        }

        var (first, from) = (at, core);
        while (at < run)
        {
            var digits = DigitsHere(run, lead.Contains(Technique.Release) ? HighestBent : frets);
            var mark = NewMark(from, lead, slide, isAttached, digits == 2, brackets > 0 && at == first);
            mark.Number = int.Parse(text.AsSpan(at, digits), CultureInfo.InvariantCulture);
            at += digits;
            if (!isStrict && lead.Contains(Technique.Release))
            {
                // In 7b(9)r(7) the brackets say that nothing is struck, which is so.
                brackets &= ~1;
                at += After(at, ')') ? 1 : 0;
            }

            if (at < run)
            {
                // More digits than one fret has.
                mark.Length = at - from;
                Place(mark, brackets);
                (from, lead, slide, isAttached) = (at, [], '\0', true);
                continue;
            }

            if (mark.Has(Technique.Release) && !AtEnd && TakeHalf())
            {
                mark.IsHalf = true;
            }

            if (run - first > 1 && from != core)
            {
                remarks.Add(
                    line,
                    first,
                    run - first,
                    run - first == 2
                        ? $"{text[first..run]} is beyond fret {frets}; read as {text[first]} and then {text[first + 1]}."
                        : $"{text[first..run]} is more than one number; read as two digits at a time up to fret {frets}, the last here {mark.Number}."
                );
            }

            Finish(mark, from, brackets);
        }
    }

    /// <summary>How many of the digits here make one fret.</summary>
    private int DigitsHere(int run, int highest) =>
        run - at >= 2 && text[at] != '0' && int.Parse(text.AsSpan(at, 2), CultureInfo.InvariantCulture) <= highest
            ? 2
            : 1;

    private bool TakeHalf()
    {
        if (text[at] == '\u00bd')
        {
            at++;
            return true;
        }

        if (text[at] == '.' && After(at + 1, '5'))
        {
            at += 2;
            return true;
        }

        return false;
    }

    private TabMark NewMark(
        int from,
        List<Technique> lead,
        char slide,
        bool isAttached,
        bool hasTwoDigits,
        bool isBracketed
    )
    {
        var mark = new TabMark
        {
            String = number,
            Line = line,
            At = from,
            Column = from,
            IsAttached = isAttached,
            HasTwoDigits = hasTwoDigits,
            IsBracketed = isBracketed,
            Before = last,
        };
        foreach (var technique in lead)
        {
            mark.Add(technique);
        }

        if (slide != '\0')
        {
            mark.Add(slide == '/' ? Technique.SlideInFromBelow : Technique.SlideInFromAbove);
        }

        foreach (var technique in waiting)
        {
            mark.Add(technique);
        }

        if (waitingSlide != '\0' && slide == '\0')
        {
            mark.Add(Technique.Slide);
        }

        waiting.Clear();
        waitingSlide = '\0';
        return mark;
    }

    /// <summary>Brackets and signs after the number.</summary>
    private void Finish(TabMark mark, int from, int brackets)
    {
        while (!AtEnd)
        {
            var c = text[at];
            if (BracketOf(c, ")]>}") is var closing && (brackets & closing) != 0)
            {
                brackets &= ~closing;
                Enclose(mark, closing);
                at++;
            }
            else if (!ReadSuffix(mark, c))
            {
                break;
            }
        }

        // A bracket that is not closed counts all the same.
        mark.Length = at - from;
        Place(mark, brackets);
    }

    private void Place(TabMark mark, int brackets)
    {
        Enclose(mark, brackets);
        touches = true;
        last = mark;
        found(mark);
    }

    private static void Enclose(TabMark mark, int brackets)
    {
        if ((brackets & 1) != 0)
        {
            mark.Add(Technique.Ghost);
        }

        if ((brackets & 2) != 0)
        {
            mark.Add(Technique.ArtificialHarmonic);
        }

        if ((brackets & 4) != 0)
        {
            mark.Add(Technique.NaturalHarmonic);
        }
    }

    private bool ReadSuffix(TabMark mark, char c)
    {
        switch (c)
        {
            case 'p' or 'P' when After(at + 1, 'b') || After(at + 1, 'B'):
                at += 2;
                mark.Add(Technique.PreBend);
                ReadBend(mark);
                return true;
            case 'b' or 'B' or '^':
                at++;
                mark.Add(Technique.Bend);
                ReadBend(mark);
                return true;
            case 't' or 'T' when After(at + 1, 'r'):
                at += 2;
                mark.Add(Technique.Trill);
                ReadTrill(mark);
                return true;
            case '~' or 'v' or 'V' or 'w':
                while (!AtEnd && text[at] == c)
                {
                    at++;
                }

                mark.Add(Technique.Vibrato);
                return true;
            case '>':
                at++;
                mark.Add(Technique.Accent);
                return true;
            case '.':
                at++;
                mark.Add(Technique.Staccato);
                return true;
            case 'm':
                at++;
                mark.Add(Technique.PalmMute);
                return true;
            case '/' or '\\':
                if (LeadsOn(at + 1))
                {
                    return false;
                }

                at++;
                if (
                    !isStrict
                    && NextOnString() is { } next
                    && mark.Number is { } here
                    && (next > here) == (c == '/')
                    && next != here
                )
                {
                    remarks.Add(
                        line,
                        at - 1,
                        1,
                        $"\"{c}\" and then a gap is read as a slide to the next number on the string, {next}."
                    );
                    waiting.Add(Technique.Slide);
                    return true;
                }

                mark.Add(c == '/' ? Technique.SlideOutUp : Technique.SlideOutDown);
                return true;
            default:
                return false;
        }
    }

    /// <summary>Whether a number, or a sign before one, follows at once.</summary>
    private bool LeadsOn(int index)
    {
        while (index < end && text[index] is 'h' or 'p' or 'r' or 't' or 's' or 'H' or 'P' or 'R' or 'T' or 'S')
        {
            index++;
        }

        return index < end && (char.IsAsciiDigit(text[index]) || text[index] is 'x' or 'X' or '(' or '<' or '[' or '{');
    }

    // The next number in the bar, if the line and nothing else stands between; near enough to belong together.
    private int? NextOnString()
    {
        const int Near = 12;
        var index = at;
        while (index < end && index - at < Near && text[index] == '-')
        {
            index++;
        }

        return index > at && index < end && TakeFret(index, out var fret, out _) ? fret : null;
    }

    private bool TakeFret(int from, out int fret, out int after)
    {
        (fret, after) = (0, from);
        while (after < end && after - from < 2 && char.IsAsciiDigit(text[after]))
        {
            fret = (fret * 10) + text[after++] - '0';
        }

        if (after - from == 2 && fret > HighestBent)
        {
            after--;
            fret /= 10;
        }

        return after > from;
    }

    private void ReadTrill(TabMark mark)
    {
        var inBrackets = !AtEnd && text[at] == '(';
        if (TakeFret(at + (inBrackets ? 1 : 0), out var fret, out var after) && (!inBrackets || After(after, ')')))
        {
            mark.TrillNumber = fret;
            at = after + (inBrackets ? 1 : 0);
        }
    }

    /// <summary>The fret to which it is bent, or how far, in whole tones: 9, (9), 7.5, 1/2, full.</summary>
    private void ReadBend(TabMark mark)
    {
        var (back, isOpen) = (at, !AtEnd && text[at] == '(');
        at += isOpen ? 1 : 0;
        var from = at;
        if (Take("full") || Take("f"))
        {
            mark.BendCents = 200;
        }
        else if (TakeFret(at, out var fret, out var after))
        {
            var fretHere = mark.Number ?? 0;
            if (
                fret < fretHere
                && after < end
                && text[after] == '/'
                && TakeFret(after + 1, out var under, out var afterUnder)
                && under is 2 or 4
            )
            {
                mark.BendCents = fret * 200 / under;
                at = afterUnder;
            }
            else
            {
                at = after;
                mark.BendHalves = (2 * fret) + (!AtEnd && TakeHalf() ? 1 : 0);
                if (!AtEnd && text[at] == '.' && fret * 2 == mark.BendHalves && After(at + 1, '0'))
                {
                    at += 2;
                }

                if (mark.BendHalves < 2 * fretHere)
                {
                    mark.BendCents = mark.BendHalves * 50;
                    mark.BendHalves = null;
                    remarks.Add(
                        line,
                        from,
                        at - from,
                        $"Fret {fret} lies below fret {fretHere}, so no bend leads there; read as a bend by {Words(mark.BendCents.Value)}."
                    );
                }
            }
        }
        else if (!AtEnd && text[at] is '\u00bd' or '\u00bc' or '\u00be')
        {
            mark.BendCents = text[at] switch
            {
                '\u00bd' => 100,
                '\u00bc' => 50,
                _ => 150,
            };
            at++;
        }
        else
        {
            at = back;
            if (mark.BendHalves is null && mark.BendCents is null)
            {
                mark.BendCents = 200;
                remarks.Add(line, at - 1, 1, "How far it is bent is not said; read as a whole tone.");
            }

            return;
        }

        if (isOpen && After(at, ')'))
        {
            at++;
        }
    }

    private bool Take(string word)
    {
        if (!text.AsSpan(at, end - at).StartsWith(word, StringComparison.OrdinalIgnoreCase))
        {
            return false;
        }

        at += word.Length;
        return true;
    }

    internal static string Words(int cents) =>
        cents switch
        {
            50 => "a quarter tone",
            100 => "a semitone",
            200 => "a whole tone",
            _ => $"{cents} cents",
        };
}

/// <summary>Gathers remarks.</summary>
internal sealed class TabRemarks
{
    private readonly List<TabRemark> all = [];

    public void Add(TabLine line, int at, int length, string words)
    {
        var column = line.Column(at);
        all.Add(new(line.Number, column, Math.Max(1, line.Column(at + length) - column), words));
    }

    public IEnumerable<TabRemark> InOrder =>
        all.OrderBy(static each => each.Line).ThenBy(static each => each.Column).Distinct();
}
