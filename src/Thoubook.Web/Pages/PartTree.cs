using Thoubook.Appraisal;
using Thoubook.Appraisal.Verdicts;
using Thoubook.Record;
using Thoubook.Record.Parts;

namespace Thoubook.Web.Pages;

/// <summary>The parts of an engine as a tree: places named only by what lies in them stand in it too.</summary>
public sealed class PartTree
{
    private readonly Dictionary<PartName, PartNode> _nodes = [];

    private PartTree()
    {
    }

    public IReadOnlyList<PartNode> Top { get; private init; } = [];

    public PartNode? this[PartName name] => _nodes.GetValueOrDefault(name);

    public static PartTree Of(EngineAppraisal engine)
    {
        var top = new List<PartNode>();
        var tree = new PartTree { Top = top };
        foreach (var part in engine.Record.Parts.OrderBy(p => p.Name))
            tree.Node(part.Name, top).Part = part;
        foreach (var figure in engine.Dimensions.Concat<FigureAppraisal>(engine.Fits))
            tree.Node(figure.Figure.Name.Part, top).Figures.Add(figure);
        return tree;
    }

    private PartNode Node(PartName name, List<PartNode> top)
    {
        if (_nodes.TryGetValue(name, out var known))
            return known;
        var node = _nodes[name] = new PartNode(name);
        (name.Parent is { } parent ? Node(parent, top).Within : top).Add(node);
        return node;
    }
}

/// <summary>One place in the tree.</summary>
public sealed class PartNode(PartName name)
{
    public PartName Name { get; } = name;

    /// <summary>Null where the place is named only by what lies in it.</summary>
    public Part? Part { get; set; }

    public List<PartNode> Within { get; } = [];

    public List<FigureAppraisal> Figures { get; } = [];

    public PartIntent Intent => Part?.Intent ?? PartIntent.Fitted;

    /// <summary>The gravest verdict on its own figures and on those of what lies in it; null where there is none.</summary>
    public Verdict? Worst => Figures.Select(f => f.Verdict).Concat(Within.Select(w => w.Worst)).Where(v => v is not null).OrderBy(v => v.Gravity()).FirstOrDefault();

    public int Parts => (Part is null ? 0 : 1) + Within.Sum(w => w.Parts);
}
