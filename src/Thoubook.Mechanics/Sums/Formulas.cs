namespace Thoubook.Mechanics.Sums;

/// <summary>
/// The notation of the formulas in a working. Numbers with a decimal point; symbols told before; + − × / and ^ with the usual
/// precedence; brackets; π; and these functions. On lists everything works item by item; sum, count, least and greatest make one number of a list.
/// </summary>
public static class Formulas
{
    /// <summary>Every function that a formula may use, with its meaning.</summary>
    public static IReadOnlyDictionary<string, string> Functions { get; } = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["sqrt"] = "square root",
        ["exp"] = "exponential",
        ["ln"] = "natural logarithm",
        ["sin"] = "sine of an angle in radians",
        ["cos"] = "cosine of an angle in radians",
        ["tan"] = "tangent of an angle in radians",
        ["acos"] = "angle in radians that has this cosine",
        ["abs"] = "magnitude",
        ["min"] = "lesser of two",
        ["max"] = "greater of two",
        ["sum"] = "sum over a list",
        ["count"] = "number of items in a list",
        ["least"] = "least item of a list",
        ["greatest"] = "greatest item of a list",
        ["Phi"] = "probability that a standard normal lies below",
        ["z"] = "standard normal quantile of a probability",
        ["T"] = "probability that Student's t lies below, T(t, ν)",
        ["t"] = "Student's t quantile of a probability, t(p, ν)",
        ["g"] = "guard factor for a width in standard uncertainties and a probability, g(w, p): smallest with Phi(g) − Phi(g − w) = p",
    };

    /// <summary>The ratio of a circle's circumference to its diameter: the one symbol that need not be told.</summary>
    public const string Pi = "π";

    /// <summary>The symbols that a formula names, each once, in order.</summary>
    /// <param name="formula">In the notation described above.</param>
    /// <returns>The symbols.</returns>
    /// <exception cref="FormatException">The formula calls a function that is not in the notation.</exception>
    public static IReadOnlyList<string> SymbolsIn(string formula)
    {
        ArgumentNullException.ThrowIfNull(formula);
        var symbols = new List<string>();
        for (var i = 0; i < formula.Length;)
        {
            if (!IsLetter(formula[i]))
            {
                i++;
                continue;
            }

            var start = i;
            while (i < formula.Length && (IsLetter(formula[i]) || char.IsDigit(formula[i])))
                i++;
            var word = formula[start..i];
            if (i < formula.Length && formula[i] == '(')
            {
                if (!Functions.ContainsKey(word))
                    throw new FormatException($"The formula {formula} calls {word}, which is not a function of the notation.");
            }
            else if (word != Pi && !symbols.Contains(word))
            {
                symbols.Add(word);
            }
        }

        return symbols;
    }

    private static bool IsLetter(char c) => char.IsLetter(c) || c == '_';
}
