namespace Thoubook.Record.Closing;

/// <summary>What was found against what was left.</summary>
/// <param name="Found">As found.</param>
/// <param name="Left">As it is now; null where nothing says.</param>
public sealed record FoundAndLeft(AsFound Found, AsLeft? Left)
{
    /// <summary>[SI] by which it is now greater; null where one of the two is no figure.</summary>
    public double? Difference => Found.Value is { } found && Left?.Si is { } left ? left - found.Si : null;

    /// <summary>The difference in the unit in which it was found, with its sign; null where there is none.</summary>
    public string? DifferenceSaid => Difference is { } by && Found.Value is { } found
        ? $"{(by > 0 ? "+" : "")}{found.Unit.Show(by + found.Unit.Offset)}"
        : null;

    /// <summary>Everything that was found, in the order in which it was taken down, against the figures and words of now. What was passed over is left out.</summary>
    /// <param name="closeUp">How far the engine is.</param>
    /// <param name="figures">The present figure of a dimension or fit where no check of it stands; null where it is not known.</param>
    public static IReadOnlyList<FoundAndLeft> Of(CloseUp closeUp, Func<FigureName, AsLeft?> figures)
    {
        var record = closeUp.Plan.Record;
        return
        [
            .. record.AsFound.Where(f => !f.Skipped && record.Index.StrikeOutOf(f.Id) is null)
                .Select(f => new FoundAndLeft(f, f.Figure is { } figure ? Checked(record, figure) ?? figures(figure) : InWords(closeUp, f))),
        ];
    }

    private static AsLeft? Checked(EngineRecord record, FigureName figure) =>
        record.Index.ChecksOf(figure).LastOrDefault(c => Standing.Of(c, record).Stands) is { } check ? new(check.Value.Text, check.Value.Si, check.Headline) : null;

    private static AsLeft? InWords(CloseUp closeUp, AsFound found)
    {
        var record = closeUp.Plan.Record;
        if (found.Joint is { } name && record.Joints.FirstOrDefault(j => j.Name == name) is { } joint && record.Index.StatesOf(name).LastOrDefault(s => Standing.Of(s, record).Stands) is { } state)
        {
            var how = string.Join(", ", new[] { joint.Locking is { } locking && state.Stage >= JointStage.Locked ? locking : null, state.Applied?.Text, state.Note }.OfType<string>());
            return new($"{state.Stage.Word()}{(how.Length > 0 ? $": {how}" : "")}", null, state.Headline);
        }

        if (found.Part is { } part && found.Tag is not null)
            return record.Index.PlacedIn(part) is { } placed ? new(placed.Piece.Text, null, placed.Headline) : null;
        var accepted = record.Acceptances.LastOrDefault(a => string.Equals(a.Hold, found.What, StringComparison.OrdinalIgnoreCase) && Standing.Of(a, record).Stands);
        return accepted is null ? null : new(accepted.Why ?? "accepted", null, accepted.Headline);
    }
}

/// <summary>How a thing is now.</summary>
/// <param name="What">As the trade writes it.</param>
/// <param name="Si">[SI] where it is a figure.</param>
/// <param name="By">The fact or the estimate that says so.</param>
public sealed record AsLeft(string What, double? Si, string By);
