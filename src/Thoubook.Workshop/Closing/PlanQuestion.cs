using Thoubook.Files;
using Thoubook.Files.EngineFiles;
using Thoubook.Record;
using Thoubook.Record.Closing;
using Thoubook.Record.Quantities;

namespace Thoubook.Workshop.Closing;

/// <summary>A plan asked from its file alone, as a person words it. Needs no workshop.</summary>
public sealed record PlanQuestion
{
    /// <summary>How many people do the work, as typed; null: as many as it takes.</summary>
    public string? People { get; init; }

    /// <summary>The codes of questions answered in the file's lines.</summary>
    public IReadOnlySet<string> Confirmed { get; init; } = new HashSet<string>(StringComparer.Ordinal);

    /// <summary>The times of the <c>steps:</c> section of a text.</summary>
    /// <param name="text">The text of the file.</param>
    /// <param name="fileName">For messages.</param>
    /// <param name="terms">Who takes it in and when.</param>
    public Outcome<PlanAnswer> Ask(string text, string fileName, ImportTerms terms) => EngineFile.ReadPlan(text, fileName, terms with { Confirmed = Confirmed }).Then(record =>
    {
        var plan = Plan.Of(record);
        if (Schedule.Of(plan) is not { } schedule)
            return new Outcome<PlanAnswer>.Refused([.. plan.Faults.Where(f => f.Kind == PlanFaultKind.Circle).Select(f => new Problem("plan-circle", "steps", "a circle", f.What, "Take out one of these."))]);
        return HowMany().Then<PlanAnswer>(people => people is null
            ? new PlanAnswer(plan, schedule, null)
            : Crew.Of(plan, people.Value).Then<PlanAnswer>(crew => new PlanAnswer(plan, schedule, crew)));
    });

    private Outcome<int?> HowMany()
    {
        if (People is null)
            return (int?)null;
        return QuantityReader.Read(People, new ReadingContext { Kind = QuantityKind.Number }).IsOk(out var number, out _) && number.Si is >= 1 and <= ClosingCheck.MostPeople && number.Si == Math.Floor(number.Si)
            ? (int?)number.Si
            : new Problem("crew-people", "people", $"\"{People}\"", $"A whole number of people from 1 to {ClosingCheck.MostPeople}.", "Say how many there are.");
    }
}

/// <summary>The times of a plan.</summary>
/// <param name="Plan">With what is wrong in it.</param>
/// <param name="Schedule">With as many people as it takes.</param>
/// <param name="Crew">With those that were said; null where none were.</param>
public sealed record PlanAnswer(Plan Plan, Schedule Schedule, CrewTime? Crew);
