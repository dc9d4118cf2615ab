using Thoubook.Record;
using Thoubook.Record.Measures;
using Thoubook.Record.Parts;

namespace Thoubook.Workshop;

/// <summary>A sub-assembly to begin an engine with: its parts, what is measured on them and how they fit. It brings no limits; those come from the book.</summary>
/// <param name="Name">Stable, for forms and scripts.</param>
/// <param name="Words">What it is, to a person.</param>
public sealed record Starter(string Name, string Words)
{
    private const string Pump = "pressure-pump";

    public IReadOnlyList<Part> Parts { get; private init; } = [];

    public IReadOnlyList<Dimension> Dimensions { get; private init; } = [];

    public IReadOnlyList<Fit> Fits { get; private init; } = [];

    /// <summary>Every starter there is.</summary>
    public static IReadOnlyList<Starter> All { get; } = [GearPump()];

    public static Starter? Find(string name) => All.FirstOrDefault(s => s.Name == name);

    /// <summary>The engine as it begins with this.</summary>
    public EngineRecord On(Engine engine) => new(engine) { Parts = Parts, Dimensions = Dimensions, Fits = Fits };

    /// <summary>Body, cover and the two gears on their spindles: end float over the faces, running clearance in the bores.</summary>
    private static Starter GearPump() => new("gear-pump", "a gear pump for oil")
    {
        Parts = [Part("body", "cast aluminium"), Part("cover", "cast aluminium"), Part("driver", "steel"), Part("driven", "steel"), Part("joint", "paper")],
        Dimensions =
        [
            Dimension("body", "depth", Counting.Least, WearDirection.Grows),
            Dimension("body", "driver-bore", Counting.Greatest, WearDirection.Grows),
            Dimension("body", "driven-bore", Counting.Greatest, WearDirection.Grows),
            Dimension("driver", "width", Counting.Greatest, WearDirection.Shrinks),
            Dimension("driven", "width", Counting.Greatest, WearDirection.Shrinks),
            Dimension("driver", "spindle-diameter", Counting.Least, WearDirection.Shrinks),
            Dimension("driven", "spindle-diameter", Counting.Least, WearDirection.Shrinks),
            Dimension("joint", "thickness", Counting.Mean, WearDirection.None),
        ],
        Fits =
        [
            EndFloat("driver"), EndFloat("driven"), Running("driver"), Running("driven"),
        ],
    };

    private static Part Part(string leaf, string material) => new(PartName.Of($"{Pump}/{leaf}")) { Material = material };

    private static FigureName Figure(string leaf, string local) => FigureName.Of($"{Pump}/{leaf}.{local}");

    private static Dimension Dimension(string leaf, string local, Counting counts, WearDirection wear) => new(Figure(leaf, local)) { Counts = counts, Wear = wear };

    private static Fit EndFloat(string gear) => new(FigureName.Of($"{Pump}.{gear}-end-float"))
    {
        FitKind = FitKind.EndFloat,
        Side = Side.Total,
        Wear = WearDirection.Grows,
        Gap = [new(1, Figure("body", "depth")), new(-1, Figure(gear, "width")), new(1, Figure("joint", "thickness"))],
    };

    private static Fit Running(string gear) => new(FigureName.Of($"{Pump}.{gear}-clearance"))
    {
        FitKind = FitKind.Clearance,
        Side = Side.Diametral,
        Wear = WearDirection.Grows,
        Gap = [new(1, Figure("body", $"{gear}-bore")), new(-1, Figure(gear, "spindle-diameter"))],
    };
}
