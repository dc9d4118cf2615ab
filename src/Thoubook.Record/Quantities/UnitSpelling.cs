using System.Runtime.InteropServices;

namespace Thoubook.Record.Quantities;

/// <summary>The units that one way of writing may mean: anywhere, and where their kind is expected.</summary>
internal sealed record SpelledUnits(TradeUnit[] Anywhere, TradeUnit[] WhereExpected)
{
    public IEnumerable<TradeUnit> All => Anywhere.Concat(WhereExpected);

    public IReadOnlyList<TradeUnit> For(QuantityKind? kind) =>
        kind is null ? Anywhere : [.. All.Where(unit => unit.Kind == kind)];
}

/// <summary>
/// Finds units in text. Spellings are compared by a key in which blanks, hyphens, points and multiplication marks between words are one blank,
/// <c>per</c> is a stroke and raised figures are plain ones, so that <c>lb/sq.in.</c>, <c>lb per sq in</c> and <c>lb/sq in</c> are one spelling.
/// </summary>
internal static class UnitSpelling
{
    private const int LongestSpelling = 40;

    /// <summary>Where a capital changes the meaning: milli and mega, newton and nano.</summary>
    private static readonly HashSet<string> CapitalMatters =
        new(["mpa", "mpa s", "mpas", "mg", "nm", "n m", "mn/m2", "pas"], StringComparer.OrdinalIgnoreCase);

    private static readonly HashSet<string> SingleLettersOfEitherCase = new(["f", "c", "l"], StringComparer.OrdinalIgnoreCase);

    private static readonly Dictionary<string, TradeUnit> Codes = TradeUnit.All.ToDictionary(unit => unit.Code, StringComparer.Ordinal);

    private static readonly Dictionary<string, SpelledUnits> AsWritten = new(StringComparer.Ordinal);
    private static readonly Dictionary<string, SpelledUnits> AnyCase = new(StringComparer.OrdinalIgnoreCase);
    private static readonly Dictionary<string, SpelledUnits>.AlternateLookup<ReadOnlySpan<char>> LookAsWritten;
    private static readonly Dictionary<string, SpelledUnits>.AlternateLookup<ReadOnlySpan<char>> LookAnyCase;

    static UnitSpelling()
    {
        foreach (var unit in TradeUnit.All)
        {
            foreach (var spelling in unit.Spellings.Append(unit.Symbol))
                Add(spelling, unit, expected: unit.Spellings.Count == 0 || unit.SpellingsWhereExpected.Contains(spelling));
            foreach (var spelling in unit.SpellingsWhereExpected)
                Add(spelling, unit, expected: true);
        }

        LookAsWritten = AsWritten.GetAlternateLookup<ReadOnlySpan<char>>();
        LookAnyCase = AnyCase.GetAlternateLookup<ReadOnlySpan<char>>();
    }

    public static TradeUnit? ByCode(string code) => Codes.GetValueOrDefault(code);

    /// <summary>The units that the whole text means.</summary>
    public static SpelledUnits? Whole(string text)
    {
        var trimmed = text.AsSpan().Trim();
        return At(trimmed, 0, out var length) is { } units && length == trimmed.Length ? units : null;
    }

    /// <summary>The longest spelling that begins at a place in the text.</summary>
    public static SpelledUnits? At(ReadOnlySpan<char> text, int start, out int length)
    {
        SpelledUnits? found = null;
        length = 0;
        var end = start;
        while (NextWord(text, end, start, out var after) && after - start <= LongestSpelling)
        {
            end = after;
            if (Look(text[start..end]) is { } units)
            {
                found = units;
                length = end - start;
            }
        }

        if (found is null)
            return null;
        end = start + length;
        if (end < text.Length && text[end] == '.' && char.IsAsciiLetter(text[end - 1]) && (end + 1 == text.Length || !char.IsLetterOrDigit(text[end + 1])))
            length++;
        return found;
    }

    private static SpelledUnits? Look(ReadOnlySpan<char> written)
    {
        Span<char> room = stackalloc char[LongestSpelling * 2];
        var key = room[..WriteKey(written, room)];
        return LookAsWritten.TryGetValue(key, out var units) || LookAnyCase.TryGetValue(key, out units) ? units : null;
    }

    private static void Add(string spelling, TradeUnit unit, bool expected)
    {
        if (spelling.Length == 0)
            return;
        Span<char> room = stackalloc char[LongestSpelling * 2];
        var key = new string(room[..WriteKey(spelling, room)]);
        Add(AsWritten, key, unit, expected);
        if (key.Length == 1 ? SingleLettersOfEitherCase.Contains(key) : !CapitalMatters.Contains(key))
            Add(AnyCase, key, unit, expected);
    }

    private static void Add(Dictionary<string, SpelledUnits> index, string key, TradeUnit unit, bool expected)
    {
        ref var units = ref CollectionsMarshal.GetValueRefOrAddDefault(index, key, out _);
        units ??= new([], []);
        if (!units.All.Contains(unit))
            units = expected ? units with { WhereExpected = [.. units.WhereExpected, unit] } : units with { Anywhere = [.. units.Anywhere, unit] };
    }

    /// <summary>The end of the next word or mark of a unit, over the blanks and marks that may stand before it.</summary>
    private static bool NextWord(ReadOnlySpan<char> text, int at, int start, out int after)
    {
        after = at;
        var i = at;
        if (i > start)
        {
            while (i < text.Length && IsBetween(text[i]))
                i++;
        }

        if (i >= text.Length || i - at > 3)
            return false;
        var c = text[i];
        if (c == '1' && i == start && i + 1 < text.Length && text[i + 1] == '/')
        {
            after = i + 1;
            return true;
        }

        if (FigureMarks.IsPrime(c) && i + 1 < text.Length && FigureMarks.IsPrime(text[i + 1]))
            after = i + 2;
        else if (c is '/' or '%' || FigureMarks.IsPrime(c) || FigureMarks.IsDoublePrime(c) || FigureMarks.IsDegree(c) || c is '℃' or '℉')
            after = i + 1;
        else if (char.IsLetter(c))
        {
            while (i < text.Length && char.IsLetter(text[i]))
                i++;
            if (i < text.Length && text[i] == '^' && i + 1 < text.Length && text[i + 1] is '2' or '3')
                i++;
            if (i < text.Length && text[i] is '2' or '3' or '²' or '³' && (i + 1 == text.Length || !char.IsLetterOrDigit(text[i + 1]) && text[i + 1] is not ('.' or ',')))
                i++;
            else if (i < text.Length && FigureMarks.IsDegree(text[i]))
                i++;
            after = i;
        }

        return after > at;
    }

    private static bool IsBetween(char c) => FigureMarks.IsBlank(c) || c is '-' or '.' or '·' or '⋅' or '*';

    private static int WriteKey(ReadOnlySpan<char> written, Span<char> key)
    {
        var length = 0;
        var blank = false;
        for (var i = 0; i < written.Length; i++)
        {
            var c = written[i];
            if (IsBetween(c))
            {
                blank = length > 0;
                continue;
            }

            if (c == '^')
                continue;
            var atWord = blank || length == 0 || !char.IsLetter(key[length - 1]);
            if (atWord && IsPer(written[i..]))
            {
                c = '/';
                i += 2;
            }

            if (blank && c != '/' && key[length - 1] is not ('/' or '°'))
                key[length++] = ' ';
            blank = false;
            if (FigureMarks.IsPrime(c) && i + 1 < written.Length && FigureMarks.IsPrime(written[i + 1]))
            {
                c = '"';
                i++;
            }

            if (c is '℃' or '℉')
                key[length++] = '°';
            key[length++] = c switch
            {
                '℃' => 'C',
                '℉' => 'F',
                '²' => '2',
                '³' => '3',
                'μ' => 'µ',
                '\u212A' => 'K',
                _ when FigureMarks.IsDegree(c) => '°',
                _ when FigureMarks.IsPrime(c) => '\'',
                _ when FigureMarks.IsDoublePrime(c) => '"',
                _ => c,
            };
        }

        return length;
    }

    private static bool IsPer(ReadOnlySpan<char> text) =>
        text.StartsWith("per", StringComparison.OrdinalIgnoreCase) && (text.Length == 3 || !char.IsLetter(text[3]));
}
