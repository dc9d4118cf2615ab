namespace Thoubook.Mechanics.Sums;

/// <summary>The lines of a sum: each quantity with its symbol, value, unit, formula and source.</summary>
/// <param name="Lines">In the order in which they follow from each other.</param>
public sealed record Working(IReadOnlyList<WorkingLine> Lines);

/// <summary>One quantity of a working.</summary>
/// <param name="Symbol">Letter used in later formulas.</param>
/// <param name="What">What it is, in words.</param>
/// <param name="Formula">How it follows from its inputs, in the notation of <see cref="Formulas"/>; empty for what was given.</param>
/// <param name="Inputs">The quantities that the formula names, with their values.</param>
/// <param name="Values">[any] one value, or the values of a list in order.</param>
/// <param name="IsList">Whether it is a list, even of one.</param>
/// <param name="Unit">SI unit; "-" for a plain number.</param>
/// <param name="Source">Where the formula or the value comes from; empty where it is plain arithmetic or was given.</param>
public sealed record WorkingLine(string Symbol, string What, string Formula, IReadOnlyList<WorkingInput> Inputs, IReadOnlyList<double> Values, bool IsList, string Unit, string Source);

/// <summary>A quantity that a formula names.</summary>
/// <param name="Symbol">Its letter.</param>
/// <param name="Values">[any] its value, or the values of a list in order.</param>
/// <param name="IsList">Whether it is a list, even of one.</param>
public sealed record WorkingInput(string Symbol, IReadOnlyList<double> Values, bool IsList);

/// <summary>Writes a working while a sum runs.</summary>
/// <param name="unit">SI unit of the quantity asked about; stands wherever a line says <see cref="Units.Any"/>.</param>
public sealed class WorkingWriter(string unit)
{
    private readonly List<WorkingLine> _lines = [];
    private readonly List<string> _cautions = [];

    /// <summary>The trace to hand to the sum.</summary>
    public Written Trace => new(this);

    /// <summary>The working so far.</summary>
    public Working Working => new([.. _lines]);

    /// <summary>What was told beside the answer so far.</summary>
    public IReadOnlyList<string> Cautions => [.. _cautions];

    internal void Add(string symbol, string what, string formula, double[] values, bool isList, string unitOfLine, string source)
    {
        if (_lines.Exists(line => line.Symbol == symbol))
            throw new InvalidOperationException($"The working tells {symbol} twice.");
        var inputs = Formulas.SymbolsIn(formula).Select(name =>
            _lines.Find(line => line.Symbol == name) is { } told
                ? new WorkingInput(name, told.Values, told.IsList)
                : throw new InvalidOperationException($"The formula {formula} names {name}, which was not told before."));
        _lines.Add(new WorkingLine(symbol, what, formula, [.. inputs], values, isList, unitOfLine == Units.Any ? unit : unitOfLine, source));
    }

    internal void AddCaution(string text)
    {
        if (!_cautions.Contains(text))
            _cautions.Add(text);
    }
}

/// <summary>The trace that writes a working.</summary>
public readonly struct Written : ITrace
{
    private readonly WorkingWriter _writer;

    internal Written(WorkingWriter writer) => _writer = writer;

    /// <inheritdoc/>
    public static bool Writes => true;

    /// <inheritdoc/>
    public void Given(string symbol, string what, double value, string unit, string source = "") => _writer.Add(symbol, what, "", [value], isList: false, unit, source);

    /// <inheritdoc/>
    public void Given(string symbol, string what, ReadOnlySpan<double> values, string unit, string source = "") => _writer.Add(symbol, what, "", values.ToArray(), isList: true, unit, source);

    /// <inheritdoc/>
    public double Line(string symbol, string what, string formula, double value, string unit, string source = "")
    {
        _writer.Add(symbol, what, formula, [value], isList: false, unit, source);
        return value;
    }

    /// <inheritdoc/>
    public void Line(string symbol, string what, string formula, ReadOnlySpan<double> values, string unit, string source = "") => _writer.Add(symbol, what, formula, values.ToArray(), isList: true, unit, source);

    /// <inheritdoc/>
    public void Caution(string text) => _writer.AddCaution(text);
}
