namespace Thoubook.Record.Quantities;

/// <summary>
/// Finds the figures in a piece of text and judges nothing: numbers with what they may be worth, the units after them, signs, dashes, words.
/// For texts that hold several figures (a cell of a schedule of limits); a text that holds one quantity goes to <see cref="QuantityReader"/>.
/// </summary>
public static class FigureLexer
{
    public static IReadOnlyList<FigureToken> Scan(string text, DecimalMark mark = DecimalMark.Unstated)
    {
        ArgumentNullException.ThrowIfNull(text);
        var tokens = new List<FigureToken>(4);
        var at = 0;
        while (at < text.Length)
        {
            if (FigureMarks.IsBlank(text[at]) || text[at] is '\r' or '\n')
            {
                at++;
                continue;
            }

            var token = Next(text, at, mark, tokens.Count > 0 ? tokens[^1] : null);
            tokens.Add(token);
            at = token.End;
        }

        return WholeMeaning(text, tokens) is { } kind ? [new FigureToken(kind, text.Trim(), tokens[0].Start)] : tokens;
    }

    private static FigureToken Next(string text, int at, DecimalMark mark, FigureToken? before)
    {
        var afterNumber = before?.Kind is FigureTokenKind.Number;
        var afterFigure = afterNumber || before?.Kind is FigureTokenKind.Unit or FigureTokenKind.FitLetter;
        if (afterNumber && text[at] == '1' && UnitSpelling.At(text, at, out var reciprocal) is { } per)
            return new FigureToken(FigureTokenKind.Unit, text.Substring(at, reciprocal), at) { Spelled = per };
        if (FigureNumber.At(text, at, mark) is { } number)
            return number;

        var c = text[at];
        var units = UnitSpelling.At(text, at, out var length);
        if (afterFigure && length <= 1 && c is 'T' or 't' or 'L' or 'l' && !IsWordCharacter(text, at + 1))
            return new FigureToken(FigureTokenKind.FitLetter, text.Substring(at, 1), at) { Spelled = units };
        if (units is not null && afterFigure && before?.Kind != FigureTokenKind.Unit)
            return new FigureToken(FigureTokenKind.Unit, text.Substring(at, length), at) { Spelled = units };
        if (FigureMarks.IsDoublePrime(c) || c is '„')
            return One(FigureTokenKind.Ditto) with { Spelled = units };
        if (FigureMarks.IsPrime(c) && at + 1 < text.Length && FigureMarks.IsPrime(text[at + 1]) || text.AsSpan(at).StartsWith(",,"))
            return new FigureToken(FigureTokenKind.Ditto, text.Substring(at, 2), at);
        if (char.IsLetter(c) || FigureMarks.IsDegree(c) || c == '%')
        {
            length = units is null ? WordLength(text, at) : length;
            return new FigureToken(FigureTokenKind.Word, text.Substring(at, length), at) { Spelled = units };
        }

        if (FigureMarks.IsDash(c))
        {
            var end = at;
            while (end < text.Length && FigureMarks.IsDash(text[end]))
                end++;
            return new FigureToken(end - at > 1 ? FigureTokenKind.NilDashes : FigureTokenKind.Dash, text[at..end], at);
        }

        return One(c switch
        {
            '+' or '±' => FigureTokenKind.Sign,
            '(' or '[' => FigureTokenKind.Open,
            ')' or ']' => FigureTokenKind.Close,
            ',' => FigureTokenKind.Comma,
            _ when FigureMarks.IsStroke(c) => FigureTokenKind.Slash,
            _ => FigureTokenKind.Other,
        });

        FigureToken One(FigureTokenKind kind) => new(kind, text.Substring(at, char.IsSurrogatePair(text, at) ? 2 : 1), at);
    }

    /// <summary>What a text means that is nothing but a dash, or <c>do.</c>, or <c>ditto</c>.</summary>
    private static FigureTokenKind? WholeMeaning(string text, List<FigureToken> tokens)
    {
        if (tokens is [{ Kind: FigureTokenKind.Dash }])
            return FigureTokenKind.NilDashes;
        return tokens.Count is > 0 and <= 4 && text.AsSpan().Trim(" .-\u2013\u2014\t\r\n") is var word
            && (word.Equals("do", StringComparison.OrdinalIgnoreCase) || word.Equals("ditto", StringComparison.OrdinalIgnoreCase))
            ? FigureTokenKind.Ditto
            : null;
    }

    private static int WordLength(string text, int at)
    {
        var end = at + 1;
        while (IsWordCharacter(text, end) || end + 1 < text.Length && FigureMarks.IsPrime(text[end]) && char.IsLetter(text[end + 1]) && char.IsLetter(text[end - 1]))
            end++;
        return end - at;
    }

    private static bool IsWordCharacter(string text, int at) => at < text.Length && char.IsLetterOrDigit(text[at]) && FigureMarks.Fraction(text[at]).Under == 0;
}
