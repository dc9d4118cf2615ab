namespace Thoubook.Web.Drawings.Circuits;

/// <summary>
/// How much room lettering takes, before it is drawn: by the widths of an ordinary sans, which is wider than any of the narrow ones that the sheets ask for,
/// so that what fits here fits whichever of them the machine has.
/// </summary>
public static class LetterWidth
{
    public const double Ascent = 0.78;

    public const double Descent = 0.22;

    /// <summary>Widths of the printable ASCII letters from the blank on, in thousandths of the size.</summary>
    private static readonly short[] Ascii =
    [
        278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556,
        1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556,
        333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
    ];

    /// <summary>[px] of a line of text at a size in px.</summary>
    public static double Of(string text, double size, bool bold = false)
    {
        double sum = 0;
        foreach (var c in text)
            sum += c is >= ' ' and <= '~' ? Ascii[c - ' '] : c is '−' or '±' or '×' ? 584 : c is '\u202f' or '°' ? 400 : 1000;
        return sum * size / 1000 * (bold ? 1.07 : 1);
    }

    /// <summary>A name in at most two lines of about equal length, neither longer than it may be; what has no room ends in three dots.</summary>
    public static IReadOnlyList<string> Lines(string text, double size, double longest)
    {
        if (Of(text, size) <= longest)
            return [text];
        var best = -1;
        for (var at = text.IndexOf(' '); at > 0; at = text.IndexOf(' ', at + 1))
        {
            if (best < 0 || Math.Abs(at - text.Length / 2) < Math.Abs(best - text.Length / 2))
                best = at;
        }

        return best < 0 ? [Cut(text, size, longest)] : [Cut(text[..best], size, longest), Cut(text[(best + 1)..], size, longest)];
    }

    private static string Cut(string text, double size, double longest)
    {
        if (Of(text, size) <= longest)
            return text;
        var length = text.Length;
        while (length > 1 && Of(text[..length], size) + size > longest)
            length--;
        return text[..length].TrimEnd() + "…";
    }
}
