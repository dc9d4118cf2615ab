namespace Thoubook.Record.Quantities;

/// <summary>The shape of a text that holds one quantity: sign or brackets, one or more numbers with their units, a letter that says tight or loose.</summary>
internal sealed class WrittenQuantity
{
    /// <summary>Numbers with the unit token that follows each; several for 2 ft 3 in.</summary>
    public List<(FigureToken Number, FigureToken? Unit)> Parts { get; } = new(1);

    public bool Minus { get; private set; }

    public bool Plus { get; private set; }

    public bool Brackets { get; private set; }

    /// <summary>'T', 'L' or nothing.</summary>
    public char Fit { get; private set; }

    /// <summary>Reads the shape; the first token that does not belong to one quantity comes back in <paramref name="leftOver"/>.</summary>
    public static WrittenQuantity Parse(IReadOnlyList<FigureToken> tokens, bool fitLetters, out FigureToken? leftOver)
    {
        var written = new WrittenQuantity();
        var at = 0;
        if (Is(FigureTokenKind.Open, "("))
        {
            written.Brackets = true;
            at++;
        }

        // A sign stands against its number: a dash with a blank after it may be a bullet.
        if ((Peek() is { Kind: FigureTokenKind.Dash } dash && FigureMarks.IsMinus(dash.Text[0]) || Is(FigureTokenKind.Sign, "+"))
            && at + 1 < tokens.Count && tokens[at + 1].Start == tokens[at].End)
        {
            written.Minus = tokens[at].Kind == FigureTokenKind.Dash;
            written.Plus = !written.Minus;
            at++;
        }

        while (Peek() is { Kind: FigureTokenKind.Number } number)
        {
            at++;
            written.Parts.Add((number, null));
            written.TakeFit(tokens, ref at, fitLetters);
            if (Peek() is { } unit && IsUnit(unit, written.Parts.Count > 1 || written.Fit != 0))
            {
                at++;
                written.Parts[^1] = (number, unit);
                written.TakeFit(tokens, ref at, fitLetters);
            }
            else
            {
                break;
            }

            if (Peek() is { Kind: FigureTokenKind.Dash } && at + 1 < tokens.Count && tokens[at + 1].Kind == FigureTokenKind.Number && IsJoined(tokens, at))
                at++;
        }

        if (written.Brackets && Is(FigureTokenKind.Close, ")"))
        {
            at++;
            if (written.Parts is [(var number, null)] && Peek() is { } unit && IsUnit(unit, true))
            {
                at++;
                written.Parts[0] = (number, unit);
            }
        }
        else if (written.Brackets)
        {
            leftOver = Peek() ?? tokens[0];
            return written;
        }

        leftOver = Peek();
        return written;

        FigureToken? Peek() => at < tokens.Count ? tokens[at] : null;

        bool Is(FigureTokenKind kind, string text) => Peek() is { } token && token.Kind == kind && token.Text == text;
    }

    /// <summary>2 lb-11 oz: a hyphen between parts that each have their unit, never one before the last number of a range.</summary>
    private static bool IsJoined(IReadOnlyList<FigureToken> tokens, int dash) =>
        dash + 2 < tokens.Count && FigureMarks.IsHyphen(tokens[dash].Text[0])
        && tokens[dash + 2].Spelled is not null && tokens[dash - 1].Spelled is { } before && tokens[dash + 2].Spelled != before
        && tokens[dash].Start == tokens[dash - 1].End && tokens[dash + 1].Start == tokens[dash].End;

    private static bool IsUnit(FigureToken token, bool wordToo) =>
        token.Kind == FigureTokenKind.Unit
        || wordToo && token is { Kind: FigureTokenKind.Word or FigureTokenKind.Ditto or FigureTokenKind.FitLetter, Spelled: not null }
        || token is { Kind: FigureTokenKind.FitLetter, Spelled: not null };

    private void TakeFit(IReadOnlyList<FigureToken> tokens, ref int at, bool fitLetters)
    {
        if (Fit != 0 || at >= tokens.Count || !fitLetters && tokens[at].Spelled is not null)
            return;
        Fit = tokens[at] switch
        {
            { Kind: FigureTokenKind.FitLetter, Text: "T" or "t" } => 'T',
            { Kind: FigureTokenKind.FitLetter } => 'L',
            { Kind: FigureTokenKind.Word, Text: var word } when Any(word, "tight", "press") => 'T',
            { Kind: FigureTokenKind.Word, Text: var word } when Any(word, "loose", "clear") => 'L',
            _ => '\0',
        };
        if (Fit != 0)
            at++;
    }

    private static bool Any(string word, string one, string other) =>
        word.Equals(one, StringComparison.OrdinalIgnoreCase) || word.Equals(other, StringComparison.OrdinalIgnoreCase);
}
