using System.Numerics;

namespace Thoubook.Record.Quantities;

/// <summary>Reads one written number at a place in a text.</summary>
internal static class FigureNumber
{
    private const string DecimalPoint = "decimal-point";
    private const string DecimalComma = "decimal-comma";
    private const string ThousandsPoint = "thousands-point";
    private const string ThousandsComma = "thousands-comma";

    private static readonly string[] Words =
        ["nought", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];

    /// <summary>The number that begins at a place; null if none does.</summary>
    public static FigureToken? At(string text, int start, DecimalMark mark)
    {
        var c = text[start];
        if (FigureMarks.Fraction(c) is { Under: > 0 } sign)
            return Token(text, start, start + 1, FigureForm.Fraction, new Exact(sign.Over, sign.Under), $"{sign.Over}/{sign.Under}");
        if (!FigureMarks.IsDigit(c) && !(c is '.' or ',' && start + 1 < text.Length && FigureMarks.IsDigit(text[start + 1])))
            return Spelled(text, start);

        var end = start;
        while (end < text.Length && (FigureMarks.IsDigit(text[end]) || text[end] is '.' or ','))
            end++;
        while (text[end - 1] is '.' or ',')
            end--;
        var run = text.AsSpan(start, end - start);
        if (run.IndexOfAny('.', ',') < 0 && Fraction(text, start, end, run) is { } fraction)
            return fraction;

        var (form, values) = Resolve(run, mark);
        if (values.Count == 1 && PowerOfTen(text, end, out var afterPower, out var power))
        {
            var plain = values[0];
            // Beyond this no measured quantity lies; the reader refuses it as too large or too small without working it out.
            var clamped = Math.Clamp(power, -400, 400);
            values = [plain with { Value = plain.Value * Exact.Decimal(1, clamped), Written = $"{plain.Written}e{power}" }];
            form = form == FigureForm.Doubtful ? form : FigureForm.Exponent;
            end = afterPower;
        }

        return new FigureToken(FigureTokenKind.Number, text[start..end], start) { Form = form, Values = values };
    }

    /// <summary>
    /// What the points and commas of a number mean. One point is decimal. One comma is decimal where what follows it can't be a group of three
    /// (80,02 - 0,025 - 1234,567); else it is asked. Both marks together have one consistent meaning or none.
    /// </summary>
    private static (FigureForm Form, IReadOnlyList<FigureValue> Values) Resolve(ReadOnlySpan<char> run, DecimalMark mark)
    {
        var points = run.Count('.');
        var commas = run.Count(',');
        if (points + commas == 0)
            return (FigureForm.Whole, [Value(run, 'x')]);

        if (points > 0 && commas > 0)
        {
            var last = run.LastIndexOfAny('.', ',');
            var decimalIs = run[last];
            var groupIs = decimalIs == '.' ? ',' : '.';
            if (run.Count(decimalIs) != 1 || !AreGroups(run[..last], groupIs))
                return (FigureForm.Broken, []);
            var contradicts = mark == (decimalIs == '.' ? DecimalMark.Comma : DecimalMark.Point);
            return contradicts
                ? (FigureForm.Doubtful, [Value(run, decimalIs, decimalIs == '.' ? DecimalPoint : DecimalComma)])
                : (FigureForm.Grouped, [Value(run, decimalIs)]);
        }

        var grouped = AreGroups(run, points > 0 ? '.' : ',');
        return (points, commas) switch
        {
            (1, 0) when mark != DecimalMark.Comma => (FigureForm.Decimal, [Value(run, '.')]),
            (1, 0) => (FigureForm.Doubtful, grouped ? [Value(run, '.', DecimalPoint), Value(run, 'x', ThousandsPoint)] : [Value(run, '.', DecimalPoint)]),
            (0, 1) when mark == DecimalMark.Comma => (FigureForm.DecimalComma, [Value(run, ',')]),
            (0, 1) when mark == DecimalMark.Point => grouped ? (FigureForm.Grouped, [Value(run, 'x')]) : (FigureForm.Doubtful, [Value(run, ',', DecimalComma)]),
            (0, 1) => grouped
                ? (FigureForm.Doubtful, [Value(run, ',', DecimalComma), Value(run, 'x', ThousandsComma)])
                : (FigureForm.DecimalComma, [Value(run, ',')]),
            ( > 1, 0) when grouped && mark == DecimalMark.Comma => (FigureForm.Grouped, [Value(run, 'x')]),
            (0, > 1) when grouped && mark != DecimalMark.Comma => (FigureForm.Grouped, [Value(run, 'x')]),
            _ => (FigureForm.Broken, []),
        };
    }

    /// <summary>Whether marks stand where they part thousands: one to three figures that do not begin with a nought, then groups of three.</summary>
    private static bool AreGroups(ReadOnlySpan<char> run, char mark)
    {
        var first = run.IndexOf(mark);
        if (first < 0)
            return run.Length > 0 && run.IndexOfAnyExceptInRange('0', '9') < 0;
        if (first is < 1 or > 3 || run[0] == '0')
            return false;
        for (var at = first; at < run.Length; at += 4)
        {
            if (run[at] != mark || at + 4 > run.Length || run.Slice(at + 1, 3).IndexOfAnyExceptInRange('0', '9') >= 0)
                return false;
        }

        return true;
    }

    private static FigureValue Value(ReadOnlySpan<char> run, char decimalIs, string code = "")
    {
        Span<char> digits = stackalloc char[Math.Min(run.Length + 2, 256)];
        var (written, places, whole) = (0, -1, 0);
        BigInteger big = BigInteger.Zero;
        long small = 0;
        foreach (var c in run.Length <= 254 ? run : run[..254])
        {
            if (FigureMarks.IsDigit(c))
            {
                digits[written++] = c;
                if (places >= 0)
                    places++;
                else
                    whole++;
                if (small < long.MaxValue / 100 && big.IsZero)
                    small = small * 10 + (c - '0');
                else
                    big = (big.IsZero ? small : big) * 10 + (c - '0');
            }
            else if (c == decimalIs)
            {
                if (whole == 0)
                    digits[written++] = '0';
                digits[written++] = '.';
                places = 0;
            }
        }

        return new FigureValue(Exact.Decimal(big.IsZero ? small : big, -Math.Max(places, 0)), new string(digits[..written]), code);
    }

    /// <summary>11/64, 1 1/2, 1-1/2, 1½. A stroke between other whole numbers parts two figures.</summary>
    private static FigureToken? Fraction(string text, int start, int end, ReadOnlySpan<char> run)
    {
        if (run.Length > 6)
            return null;
        var number = Whole(run);
        if (PlainFraction(text, start, out var over, out var under, out var after))
            return Token(text, start, after, FigureForm.Fraction, new Exact(over, under), $"{over}/{under}");

        var next = end;
        if (next < text.Length && FigureMarks.IsHyphen(text[next]))
            next++;
        else
        {
            while (next < text.Length && next < end + 2 && FigureMarks.IsBlank(text[next]))
                next++;
        }

        if (next >= text.Length)
            return null;
        if (FigureMarks.Fraction(text[next]) is { Under: > 0 } sign)
            (over, under, after) = (sign.Over, sign.Under, next + 1);
        else if (next == end || !PlainFraction(text, next, out over, out under, out after))
            return null;
        return over < under
            ? Token(text, start, after, FigureForm.Mixed, new Exact(number * under + over, under), $"{number} {over}/{under}")
            : null;
    }

    private static bool PlainFraction(string text, int start, out int over, out int under, out int after)
    {
        (over, under, after) = (0, 0, start);
        var stroke = start;
        while (stroke < text.Length && FigureMarks.IsDigit(text[stroke]))
            stroke++;
        if (stroke == start || stroke - start > 4 || stroke + 1 >= text.Length || !FigureMarks.IsStroke(text[stroke]))
            return false;
        after = stroke + 1;
        while (after < text.Length && FigureMarks.IsDigit(text[after]))
            after++;
        if (after == stroke + 1 || after - stroke > 5)
            return false;
        if (after < text.Length && (FigureMarks.IsStroke(text[after]) || text[after] is '.' or ',' && after + 1 < text.Length && FigureMarks.IsDigit(text[after + 1])))
            return false;
        over = Whole(text.AsSpan(start, stroke - start));
        under = Whole(text.AsSpan(stroke + 1, after - stroke - 1));
        return over > 0 && under is 2 or 4 or 8 or 16 or 32 or 64 or 128 or 3 or 5 or 6 or 10 or 12 or 100 or 1000;
    }

    /// <summary>e-3, × 10^-3, x10⁻³.</summary>
    private static bool PowerOfTen(string text, int start, out int end, out int power)
    {
        (end, power) = (start, 0);
        var at = start;
        if (at < text.Length && text[at] is 'e' or 'E')
            at++;
        else
        {
            while (at < text.Length && FigureMarks.IsBlank(text[at]))
                at++;
            if (at >= text.Length || text[at] is not ('x' or '×' or '*' or '·'))
                return false;
            at++;
            while (at < text.Length && FigureMarks.IsBlank(text[at]))
                at++;
            if (!text.AsSpan(at).StartsWith("10"))
                return false;
            at += 2;
            if (at < text.Length && text[at] == '^')
                at++;
            else if (at >= text.Length || RaisedDigit(text[at]) < 0 && text[at] != '⁻')
                return false;
        }

        var negative = at < text.Length && text[at] is '-' or '\u2212' or '⁻';
        if (negative || at < text.Length && text[at] == '+')
            at++;
        var first = at;
        while (at < text.Length && at < first + 9 && (FigureMarks.IsDigit(text[at]) || RaisedDigit(text[at]) >= 0))
        {
            power = power * 10 + (FigureMarks.IsDigit(text[at]) ? text[at] - '0' : RaisedDigit(text[at]));
            at++;
        }

        if (at == first || at < text.Length && (FigureMarks.IsDigit(text[at]) || text[at] is '.' or ','))
            return false;
        power = negative ? -power : power;
        end = at;
        return true;
    }

    private static int RaisedDigit(char c) => "⁰¹²³⁴⁵⁶⁷⁸⁹".IndexOf(c);

    /// <summary>Two thou, two-tenths, half a thou, one and a half thou: only before a length in words, so that other words stay words.</summary>
    private static FigureToken? Spelled(string text, int start)
    {
        if (start > 0 && char.IsLetterOrDigit(text[start - 1]))
            return null;
        var end = WordEnd(text, start);
        var word = text.AsSpan(start, end - start);
        var value = word.ToString().ToLowerInvariant() switch
        {
            "a" or "an" => new Exact(1, 1),
            "half" => new Exact(1, 2),
            "quarter" => new Exact(1, 4),
            var other => Array.IndexOf(Words, other) is >= 0 and var number ? new Exact(number, 1) : new Exact(-1, 1),
        };
        if (value.Sign < 0)
            return null;
        if (value.Denominator.IsOne)
        {
            if (Follows(text, end, "and a half", out var afterHalf))
                (value, end) = (value + new Exact(1, 2), afterHalf);
        }
        else if (Follows(text, end, "a", out var afterA) || Follows(text, end, "an", out afterA))
        {
            end = afterA;
        }

        var unit = end;
        while (unit < text.Length && (FigureMarks.IsBlank(text[unit]) || FigureMarks.IsHyphen(text[unit])))
            unit++;
        if (unit == end || unit >= text.Length || !char.IsLetter(text[unit]))
            return null;
        var nextWord = text.AsSpan(unit, WordEnd(text, unit) - unit);
        return nextWord is "thou" or "thous" or "tenth" or "tenths" or "thousandth" or "thousandths" or "inch" or "inches" or "mm"
            ? Token(text, start, FigureMarks.IsBlank(text[end]) ? end : unit, FigureForm.Spelled, value, text[start..end])
            : null;
    }

    private static bool Follows(string text, int at, string words, out int after)
    {
        after = at + 1 + words.Length;
        return at < text.Length && FigureMarks.IsBlank(text[at])
            && text.AsSpan(at + 1).StartsWith(words, StringComparison.OrdinalIgnoreCase)
            && (after >= text.Length || !char.IsLetterOrDigit(text[after]));
    }

    private static int WordEnd(string text, int at)
    {
        while (at < text.Length && char.IsLetter(text[at]))
            at++;
        return at;
    }

    private static int Whole(ReadOnlySpan<char> digits)
    {
        var number = 0;
        foreach (var c in digits)
            number = number * 10 + (c - '0');
        return number;
    }

    private static FigureToken Token(string text, int start, int end, FigureForm form, Exact value, string written) =>
        new(FigureTokenKind.Number, text[start..end], start) { Form = form, Values = [new FigureValue(value, written, "")] };
}
