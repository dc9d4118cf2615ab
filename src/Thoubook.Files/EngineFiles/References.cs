using Thoubook.Record;
using Thoubook.Record.Closing;

namespace Thoubook.Files.EngineFiles;

/// <summary>Names in a file that stand for something else of the engine: each must be there.</summary>
internal static class References
{
    public static readonly Form<PartName?> Part = Of<PartName>(
        PartName.TryRead,
        (part, scope) => scope.Parts.Contains(part) ? null : Missing("part", part.Path, scope.Parts.Select(p => p.Path)));

    public static readonly Form<PieceTag?> Piece = Of<PieceTag>(
        PieceTag.TryRead,
        (tag, scope) => scope.Record.Index.Piece(tag) is not null ? null : Missing("piece", tag.Text, scope.Record.Pieces.Select(p => p.Tag.Text)));

    public static readonly Form<GaugeTag?> Gauge = Of<GaugeTag>(
        GaugeTag.TryRead,
        (tag, scope) => scope.Record.Index.Gauge(tag) is not null ? null : Missing("gauge", tag.Text, scope.Record.Gauges.Select(g => g.Tag.Text)));

    public static readonly Form<FigureName?> Dimension = Of<FigureName>(
        FigureName.TryRead,
        (name, scope) => scope.Record.Index.Figure(name) switch
        {
            Record.Measures.Dimension => null,
            Record.Measures.Fit => new Problem("file-fit-read", "", $"\"{name}\", which is a fit", "A reading is of a dimension of one part.", "Write a fit that was measured on parts put together under checks:."),
            _ => Missing("dimension", name.ToString(), scope.Record.Dimensions.Select(d => d.Name.ToString())),
        });

    public static readonly Form<FigureName?> Fit = Of<FigureName>(
        FigureName.TryRead,
        (name, scope) => scope.Record.Index.Figure(name) switch
        {
            Record.Measures.Fit => null,
            Record.Measures.Dimension => new Problem("file-dimension-checked", "", $"\"{name}\", which is a dimension", "A check is of a fit, measured on parts put together.", "Write a reading of a dimension under readings:."),
            _ => Missing("fit", name.ToString(), scope.Record.Fits.Select(f => f.Name.ToString())),
        });

    public static readonly Form<FigureName?> Figure = Of<FigureName>(
        FigureName.TryRead,
        (name, scope) => scope.Record.Index.Figure(name) is not null
            ? null
            : Missing("dimension or fit", name.ToString(), scope.Record.Dimensions.Concat<Record.Measures.Figure>(scope.Record.Fits).Select(f => f.Name.ToString())));

    public static readonly Form<StepName?> Step = Of<StepName>(
        StepName.TryRead,
        (name, scope) => scope.Record.Steps.Any(s => s.Name == name) ? null : Missing("step", name.Text, scope.Record.Steps.Select(s => s.Name.Text)));

    public static readonly Form<JointName?> Joint = Of<JointName>(
        JointName.TryRead,
        (name, scope) => scope.Record.Joints.Any(j => j.Name == name) ? null : Missing("joint", name.Text, scope.Record.Joints.Select(j => j.Name.Text)));

    public static readonly Form<SpaceName?> Space = Of<SpaceName>(
        SpaceName.TryRead,
        (name, scope) => scope.Record.Spaces.Any(s => s.Name == name) || scope.Record.Steps.Any(s => s.Closes.Contains(name))
            ? null
            : Missing("space", name.Text, scope.Record.Spaces.Select(s => s.Name.Text)));

    /// <summary>A part, joint, step, hold point or count, by its kind and name.</summary>
    public static readonly Form<WorkItem?> Item = new ScalarForm<WorkItem?>(
        (text, scope) => !WorkItem.TryRead(text, out var item, out var problem) ? problem : Missing(item, scope) is { } missing ? missing : item,
        item => item?.ToString());

    public static Problem Missing(string what, string name, IEnumerable<string> known) => new(
        $"file-{what.Replace(' ', '-')}-missing",
        "",
        $"\"{name}\"",
        $"Here stands {Article(what)} {what} that is in this file or in the workshop.",
        Nearest.Advice(name, known, $"Correct the name, or add the {what}."));

    private static Problem? Missing(WorkItem item, Scope scope)
    {
        var record = scope.Record;
        return item.Kind switch
        {
            ItemKind.Part => Of(scope.Parts.Select(p => p.Path)),
            ItemKind.Joint => Of(record.Joints.Select(j => j.Name.Text)),
            ItemKind.Step => Of(record.Steps.Select(s => s.Name.Text)),
            ItemKind.Hold => Of(record.Steps.SelectMany(s => s.Holds.Select(h => $"{s.Name}: {h.What}"))),
            _ => null,
        };

        Problem? Of(IEnumerable<string> known) => known.Contains(item.Name) ? null : Missing(item.Kind == ItemKind.Hold ? "hold point" : item.Kind.Word(), item.Name, known);
    }

    private static string Article(string what) => "aeiou".Contains(what[0], StringComparison.Ordinal) ? "an" : "a";

    private static ScalarForm<T?> Of<T>(Forms.Reader<T> read, Func<T, Scope, Problem?> check)
        where T : struct => new(
            (text, scope) => !read(text, out var name, out var problem) ? problem : check(name, scope) is { } missing ? missing : name,
            name => name?.ToString());
}
