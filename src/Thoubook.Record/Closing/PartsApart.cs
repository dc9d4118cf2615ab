using Thoubook.Record.Parts;

namespace Thoubook.Record.Closing;

/// <summary>Parts that are not simply fitted: of another modification state, deleted, blanked off, deferred, or of which nobody knows what they are for.</summary>
public sealed class PartsApart
{
    private PartsApart(CloseUp closeUp)
    {
        var record = closeUp.Plan.Record;
        var engine = record.Engine;
        States = engine.States;
        OfAnotherState = [.. record.Parts.Where(p => !p.BelongsTo(engine) && (p.DeletedBy is not { } by || !engine.HasState(by)))];
        Deleted = [.. record.Parts.Where(p => p.DeletedBy is { } by && engine.HasState(by))];
        NotOnThisEngine = [.. record.Parts.Where(p => p.BelongsTo(engine) && p.Intent == PartIntent.NotOnThisEngine)];
        InStead = [.. record.Parts.Where(p => p.IntentOn(engine) is PartIntent.Blanked or PartIntent.Deferred).Select(p => new PartInStead(p, closeUp.WantOf(p.Name)))];
        FunctionUnknown = [.. record.Parts.Where(p => p.FunctionUnknown)];
        Together = [.. record.Together.Select(t => new TogetherNow(t, [.. t.Parts.Where(p => !closeUp.Plan.IsFitted(p))]))];
        Tools = record.Tools;
    }

    public static PartsApart Of(CloseUp closeUp) => new(closeUp);

    /// <summary>The modification states of this engine.</summary>
    public IReadOnlyList<string> States { get; }

    public IReadOnlyList<Part> OfAnotherState { get; }

    /// <summary>Deleted by a state that this engine has.</summary>
    public IReadOnlyList<Part> Deleted { get; }

    public IReadOnlyList<Part> NotOnThisEngine { get; }

    /// <summary>Blanked off or deferred, with what stands in their stead.</summary>
    public IReadOnlyList<PartInStead> InStead { get; }

    public IReadOnlyList<Part> FunctionUnknown { get; }

    public IReadOnlyList<TogetherNow> Together { get; }

    public IReadOnlyList<KeptTool> Tools { get; }
}

/// <summary>A part that is blanked off or deferred.</summary>
/// <param name="Part">Which, with what is to stand in its stead.</param>
/// <param name="Want">What is wanting of that; null where nothing is.</param>
public sealed record PartInStead(Part Part, Want? Want);

/// <summary>Parts that go together or not at all.</summary>
/// <param name="Together">Which.</param>
/// <param name="Left">Those that are not to be fitted.</param>
public sealed record TogetherNow(Together Together, IReadOnlyList<PartName> Left)
{
    /// <summary>All of them are to be fitted, or none.</summary>
    public bool IsWhole => Left.Count == 0 || Left.Count == Together.Parts.Count;
}
