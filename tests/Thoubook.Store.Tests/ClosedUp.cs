using Thoubook.Record;
using Thoubook.Record.Closing;
using Thoubook.Record.Documents;
using Thoubook.Record.Quantities;

namespace Thoubook.Store.Tests;

/// <summary>A plan and what was done by it, with something in every place.</summary>
internal static class ClosedUp
{
    private static readonly StepName On = new("cover-on");
    private static readonly JointName Studs = new("studs");

    private static Quantity Minutes(double minutes) => new(minutes * 60, QuantityKind.Time, TradeUnit.Minute, $"{minutes} min");

    /// <summary>Laid over a record; what it names of parts, figures and pieces is that record's.</summary>
    public static EngineRecord Over(EngineRecord record, string? note = "by lamp")
    {
        var (part, piece, figure) = (record.Parts[0].Name, record.Pieces[0].Tag, record.Fits[0].Name);
        var source = new Citation(record.Documents[0].Name, note);
        var (signed, owed) = (FactId.New(), FactId.New());
        return record with
        {
            Engine = record.Engine with { States = ["mod 4", "mod 12"] },
            Parts = [record.Parts[0] with { DeletedBy = note, FunctionUnknown = true, Asks = ["which way", "how many"] }, .. record.Parts.Skip(1)],
            Together = [new(new("late-pump")) { Parts = [part, PartName.Of("pump/other")], Why = note, Note = note }],
            Tools = [new(new("Cam nut spanner")) { What = note, Made = note, Kept = "drawer 3", Note = note }],
            PermissionItems = [new(new("extinguisher")) { What = note, On = [WorkItem.Of(Studs), new(ItemKind.Hold, "cover-on: light seen")], Purposes = [Purpose.StandRun], Note = note }, new(new("bare"))],
            Spaces = [new(new("chamber")) { What = note, In = new SpaceName("crankcase"), Parts = [part], Note = note }, new(new("crankcase"))],
            Joints =
            [
                new(Studs) { Parts = [part, PartName.Of("pump/other")], In = new SpaceName("crankcase"), Thread = "1/4 BSF", Number = 6, Tightening = "60 lbf in", Locking = "tabs", Sealing = note, Inspected = true, Asks = ["which leaned"], Source = source, Note = note },
                new(new("plain")) { Parts = [part] },
            ],
            Steps =
            [
                new(On)
                {
                    Kind = StepKind.TurnByHand,
                    What = note,
                    Attitude = Attitude.OnItsSide,
                    Tools = ["drift", "lamp"],
                    Time = Minutes(30),
                    Cure = Minutes(120),
                    Open = Minutes(180),
                    People = 2,
                    Places = [part],
                    Needs = [part],
                    Joints = [Studs],
                    Brings = JointStage.PulledUp,
                    In = [new("crankcase")],
                    Closes = [new("chamber")],
                    Measures = [figure],
                    Holds = [new(HoldKind.Fit, figure.ToString()) { Figure = figure }, new(HoldKind.Finding, "light seen") { Part = part }],
                    After = [new(new("later/inner"), note)],
                    SecondLook = true,
                    Photograph = note,
                    Spoils = ["gasket"],
                    Source = source,
                    Note = note,
                },
                new(new("later/inner")),
            ],
            JointStates = [new(FactId.New(), Bench.Morning, "bench", Studs, JointStage.Locked) { Applied = Bench.Psi(3), Note = note, ReliesOn = [owed] }],
            Acceptances = [new(FactId.New(), Bench.Morning, "owner", On, "light seen") { Why = note, ReliesOn = [signed] }],
            Signatures = [new(signed, Bench.Morning, "bench", On) { SecondLook = true, Photographed = true, Note = note, ReliesOn = [owed] }],
            Departures =
            [
                new(FactId.New(), Bench.Morning, "owner", "wire", "no tabs") { Kind = DepartureKind.LockingChanged, Piece = piece, Joint = Studs, Item = WorkItem.Of(Studs), Evidence = note, Purposes = [Purpose.Display, Purpose.StandRun], Undoing = note, ReliesOn = [signed] },
                new(FactId.New(), Bench.Morning, "owner", "blank", "no pump"),
            ],
            Debts = [new(owed, Bench.Morning, "owner", "tabs", Deadline.BeforePriming) { Item = new WorkItem(ItemKind.Hold, "cover-on: light seen"), Why = note }],
            Settlements = [new(FactId.New(), Bench.Morning, "owner", owed) { How = note }],
            Counts = [new(FactId.New(), Bench.Morning, "bench", "plugs", 6, CountedWay.In) { Space = new SpaceName("chamber"), Note = note }],
            AsFound =
            [
                new(FactId.New(), Bench.Morning, "bench", figure.ToString()) { Part = part, Figure = figure, Value = new(1e-4, QuantityKind.Length, TradeUnit.Thou, "4") { Signs = FitSigns.TightIsNegative }, Words = note, Tag = piece },
                new(FactId.New(), Bench.Morning, "bench", "projection") { Joint = Studs, Value = new(0.01, QuantityKind.Length, TradeUnit.Inch, "0.4 in"), Words = note, Skipped = true },
            ],
            Permissions = [new(FactId.New(), Bench.Morning, "owner", new(LineKind.Line, "extinguisher"), Purpose.StandRun) { ReliesOn = [signed], Note = note }],
            Undoings = [new(FactId.New(), Bench.Morning, "bench", signed) { Why = note }],
        };
    }
}
