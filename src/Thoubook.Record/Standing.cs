using Thoubook.Record.Closing;

namespace Thoubook.Record;

/// <summary>
/// Whether a conclusion still stands, and if not, which fact broke it. Computed from the record whenever it is asked, never stored:
/// a conclusion stands while it and every fact that it relied on is neither struck out, nor ended, nor superseded.
/// </summary>
public sealed record Standing
{
    private Standing(Fact? brokenBy, string why)
    {
        BrokenBy = brokenBy;
        Why = why;
    }

    public static Standing Firm { get; } = new(null, "");

    /// <summary>The fact that broke it; null while it stands, and where none did: what it relied on is not in the record at all, or the purpose is another now.</summary>
    public Fact? BrokenBy { get; }

    /// <summary>In words; empty while it stands.</summary>
    public string Why { get; }

    public bool Stands => Why.Length == 0;

    /// <summary>The standing of a conclusion in a record.</summary>
    public static Standing Of(Fact conclusion, EngineRecord record) => Of(conclusion, record, []);

    private static Standing Of(Fact fact, EngineRecord record, HashSet<FactId> onTheWay)
    {
        var index = record.Index;
        if (index.StrikeOutOf(fact.Id) is { } strikeOut)
            return new(strikeOut, $"{fact.Headline} was struck out: {strikeOut.Why}");
        if (index.UndoingOf(fact.Id) is { } undone)
            return new(undone, $"{fact.Headline} was {undone.Headline}");
        if (!onTheWay.Add(fact.Id))
            return Firm;

        var own = fact switch
        {
            Chosen chosen => Occupation(chosen, chosen.Piece, index.ChosenFor(chosen.Part), index),
            Placed placed => Occupation(placed, placed.Piece, index.PlacedIn(placed.Part), index),
            Reading reading => index.WorkSince(reading) is { } work ? new(work, $"{work.Headline} altered {reading.Figure.Local} after the reading") : Firm,
            JointState state => Slackened(state, index) is { } lower ? new(lower, $"{state.Joint} was slackened: {lower.Headline}") : Firm,
            PermissionLine line => Disturbed(line, record),
            _ => Firm,
        };
        if (!own.Stands || fact is not IConclusion conclusion)
            return own;

        foreach (var id in conclusion.ReliesOn)
        {
            if (index.Fact(id) is not { } reliedOn)
                return new(null, $"what it relied on ({id}) is not in this record");
            var standing = Of(reliedOn, record, onTheWay);
            if (!standing.Stands)
                return standing;
            if (PieceOf(reliedOn) is { } piece && WorkAfter(fact, piece, index) is { } work)
                return new(work, $"{work.Headline} after it");
        }

        return Firm;
    }

    private static Standing Occupation<T>(T fact, PieceTag piece, T? now, RecordIndex index)
        where T : Fact
    {
        if (index.LiftingOf(fact.Id) is { } lifted)
            return new(lifted, $"{piece} was lifted out{(lifted.Why is { } why ? $": {why}" : "")}");
        if (now is null || now.Id != fact.Id)
            return new(now, now is null ? $"{piece} has since gone elsewhere" : $"superseded: {now.Headline}");
        return Firm;
    }

    /// <summary>The later state that took a joint back; null where it is as far as it was, or further.</summary>
    private static JointState? Slackened(JointState state, RecordIndex index) =>
        index.StatesOf(state.Joint).SkipWhile(s => s.Id != state.Id).Skip(1).FirstOrDefault(s => s.Stage < state.Stage);

    /// <summary>A line of the permission is granted for one purpose, and any work at all on a joint that it relied on disturbs it.</summary>
    private static Standing Disturbed(PermissionLine line, EngineRecord record)
    {
        if (line.Purpose != record.Engine.Purpose)
            return new(null, $"it was granted for {line.Purpose.Word()}, and the engine is now for {record.Engine.Purpose.Word()}");
        foreach (var state in line.ReliesOn.Select(record.Index.Fact).OfType<JointState>())
        {
            if (record.Index.StatesOf(state.Joint).SkipWhile(s => s.Id != state.Id).Skip(1).FirstOrDefault() is { } later)
                return new(later, $"{state.Joint} was worked on after it: {later.Headline}");
        }

        return Firm;
    }

    private static PieceTag? PieceOf(Fact fact) => fact switch
    {
        Chosen chosen => chosen.Piece,
        Placed placed => placed.Piece,
        _ => null,
    };

    /// <summary>Work done on a piece in place after the conclusion was drawn, if it altered anything.</summary>
    private static Work? WorkAfter(Fact conclusion, PieceTag piece, RecordIndex index) =>
        index.WorksOn(piece).FirstOrDefault(w => w.Altered.Count > 0 && RecordIndex.IsAfter(w, conclusion));
}
