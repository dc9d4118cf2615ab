using Thoubook.Appraisal;
using Thoubook.Appraisal.Oil;
using Thoubook.Files;
using Thoubook.Files.EngineFiles;
using Thoubook.Record;
using Thoubook.Record.Circuits;
using Thoubook.Record.Quantities;

namespace Thoubook.Workshop.Oil;

/// <summary>A circuit asked from its file alone, as a person words it. Needs no workshop.</summary>
public sealed record CircuitQuestion
{
    /// <summary>Of the engine, as typed; null: that of the circuit's first state.</summary>
    public string? Speed { get; init; }

    /// <summary>As typed; null: that of the circuit's first state, unless the viscosity is given.</summary>
    public string? OilTemperature { get; init; }

    /// <summary>Dynamic, as typed, in place of the oil's own at a temperature; it goes with <see cref="Density"/>.</summary>
    public string? Viscosity { get; init; }

    public string? Density { get; init; }

    /// <summary>The codes of questions answered, of the file's lines and of these.</summary>
    public IReadOnlySet<string> Confirmed { get; init; } = new HashSet<string>(StringComparer.Ordinal);

    /// <summary>Solves the <c>circuit:</c> section of a text, its sizes taken from the parts, dimensions and fits beside it.</summary>
    /// <param name="text">The text of the file.</param>
    /// <param name="fileName">For messages.</param>
    /// <param name="terms">Who takes it in and when.</param>
    public Outcome<OilAnswer> Ask(string text, string fileName, ImportTerms terms) =>
        EngineFile.ReadCircuit(text, fileName, terms with { Confirmed = Confirmed }).Then(record => Point(record).Then(point =>
            OilSystem.Of(Appraiser.Appraise(record)).Then(system => system.At(point)).Told(problems => EngineFile.Placed(text, fileName, problems))));

    private Outcome<OilPoint> Point(EngineRecord record)
    {
        var problems = new List<Problem>();
        var first = record.Circuit!.States is [var state, ..] ? state : null;
        var viscosity = Read(Viscosity, QuantityKind.DynamicViscosity, "viscosity", q => CircuitRanges.Viscosity.Against(q, "The viscosity of an oil"));
        var density = Read(Density, QuantityKind.Density, "density", q => CircuitRanges.Density.Against(q, "The density of an oil"));
        var temperature = ReadAxis(OilTemperature, OilQuestion.OilTemperature) ?? (Viscosity is null ? first?.OilTemperature : null);
        var speed = ReadAxis(Speed, OilQuestion.Speed) ?? first?.Speed;
        if (Speed is null && speed is null)
            problems.Add(new("speed-missing", "speed", "nothing", "The speed of the engine; the circuit has no state that says it.", "Give the speed."));
        if (Viscosity is not null && OilTemperature is not null)
            problems.Add(new("oil-twice", "viscosity", "a viscosity and an oil temperature", "The oil is known by its viscosity and density, or by its temperature.", "Leave one of them out."));
        if (Viscosity is null != Density is null)
            problems.Add(new("oil-half", Viscosity is null ? "viscosity" : "density", "nothing", "Viscosity and density go together.", "Give both."));
        if (Viscosity is null && OilTemperature is null && temperature is null)
            problems.Add(new("oil-missing", "oil-temp", "nothing", "The oil's temperature, or its viscosity and density; the circuit has no state that says it.", "Give the temperature, or the two others."));
        return problems.Count > 0
            ? new Outcome<OilPoint>.Refused(problems)
            : new OilPoint(speed!.Si, temperature?.Si ?? Workbench) { Viscosity = viscosity?.Si, Density = density?.Si };

        Quantity? Read(string? text, QuantityKind kind, string field, Func<Quantity, Problem?> against)
        {
            if (text is null)
                return null;
            if (QuantityReader.Read(text, new ReadingContext { Kind = kind, Confirmed = Confirmed }).IsOk(out var quantity, out var wrong))
                wrong = against(quantity) is { } odd ? [odd] : [];
            problems.AddRange(wrong.Select(p => p with { Field = field }));
            return wrong.Count == 0 ? quantity : null;
        }

        Quantity? ReadAxis(string? text, OilAxis axis) => Read(text, axis.Kind, axis.Field, axis.Against);
    }

    /// <summary>[K] 20 °C, at which sizes are as measured: where the oil is known by its viscosity, no temperature is.</summary>
    private const double Workbench = 293.15;
}
