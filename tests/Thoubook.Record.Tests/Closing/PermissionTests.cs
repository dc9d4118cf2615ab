using Thoubook.Record.Closing;
using Thoubook.Record.Parts;
using Thoubook.Record.Pieces;

namespace Thoubook.Record.Tests.Closing;

/// <summary>A filter closed up with a cap, and two unions outside.</summary>
public sealed class PermissionTests
{
    private static readonly PartName Element = PartName.Of("filter/element");
    private static readonly PartName Cap = PartName.Of("filter/cap");
    private static readonly PartName Feed = PartName.Of("feed-pipe");
    private static readonly JointName FeedUnion = new("feed-union");
    private static readonly JointName ReturnUnion = new("return-union");
    private static readonly PieceTag Tag = new("E-1");
    private static readonly FactId Debt = FactId.New();
    private static readonly FactId Wire = FactId.New();

    private static EngineRecord Filter()
    {
        var placed = new Placed(FactId.New(), Bench.At(1), "bench", Tag, Element);
        return Bench.Record(
            Bench.Step("element-in") with { Places = [Element] },
            Bench.Step("cap-on", StepKind.Close) with { Places = [Cap], Closes = Bench.Spaces("bowl"), Spoils = ["cap washer"] },
            Bench.Step("unions", StepKind.Join) with { Joints = [FeedUnion, ReturnUnion] })
            with
        {
            Parts = [new Part(Element), new Part(Cap), new Part(Feed)],
            Pieces = [new Piece(Tag), new Piece(new PieceTag("E-2"))],
            Spaces = [new Space(new SpaceName("bowl")) { What = "bowl of the filter", Parts = [Element] }],
            Joints = [new Joint(FeedUnion) { Parts = [Feed, Cap], Tightening = "nipped" }, new Joint(ReturnUnion) { Parts = [Feed, Cap], Tightening = "nipped", Locking = "wire" }],
            PermissionItems = [new PermissionItem(new PermissionName("extinguisher")) { Purposes = [Purpose.StandRun] }, new PermissionItem(new PermissionName("feed-dry")) { What = "feed union dry", On = [WorkItem.Of(FeedUnion)] }],
            Choices = [new Chosen(FactId.New(), Bench.At(0), "bench", Tag, Element)],
            Placings = [placed],
            JointStates = [State(FeedUnion, JointStage.Tightened, 2), State(ReturnUnion, JointStage.Tightened, 3)],
            Signatures = [new Signature(FactId.New(), Bench.At(4), "owner", new StepName("element-in")) { ReliesOn = [placed.Id] }, new Signature(FactId.New(), Bench.At(5), "owner", new StepName("cap-on")) { ReliesOn = [placed.Id] }],
            Departures = [new Departure(Wire, Bench.At(6), "owner", "no wire on the return union", "never drilled") { Joint = ReturnUnion, Purposes = [Purpose.StandRun], Undoing = "drill and wire" }],
            Debts = [new Owed(Debt, Bench.At(7), "bench", "paint the cap", Deadline.BeforeTheStart)],
        };
    }

    private static JointState State(JointName joint, JointStage stage, int minute) => new(FactId.New(), Bench.At(minute), "bench", joint, stage);

    private static PermissionToRun Of(EngineRecord record, params PermissionGround[] oil) => PermissionToRun.Of(CloseUp.Of(Plan.Of(record), new(Bench.At(100).ToInstant())), oil);

    private static LineNow Line(PermissionToRun permission, string line) => permission.Lines.Single(l => l.Ground.Line.ToString() == line);

    private static EngineRecord Settled(EngineRecord record) => record with { Settlements = [new Settled(FactId.New(), Bench.At(8), "bench", Debt)] };

    private static EngineRecord Granted(EngineRecord record) => record with
    {
        Permissions = [.. record.Permissions, .. Of(record).Lines.Where(l => l.CanBeGranted).Select(l => new PermissionLine(FactId.New(), Bench.At(50), "owner", l.Ground.Line, record.Engine.Purpose) { ReliesOn = l.Ground.ReliesOn })],
    };

    [Fact]
    public void TheList_ComesFromTheRecord_AndSaysWhatIsMissing()
    {
        var permission = Of(Filter());
        Assert.Equal(
            [("space bowl", null), ("joint feed-union", null), ("joint return-union", null), ($"debt {Debt}", "it is still owed"), ($"departure {Wire}", null), ("line extinguisher", null), ("line feed-dry", null)],
            permission.Lines.Select(l => (l.Ground.Line.ToString(), l.Ground.Missing)));
        Assert.Equal("bowl of the filter closed", permission.Lines[0].Ground.What);
        Assert.False(permission.IsGranted);
        Assert.Equal(6, permission.Lines.Count(l => l.CanBeGranted));

        var granted = Of(Granted(Filter()));
        Assert.False(granted.IsGranted);
        Assert.Equal($"debt {Debt}", granted.Lines.Single(l => !l.IsGranted).Ground.Line.ToString());
        Assert.True(Of(Granted(Settled(Filter()))).IsGranted);
    }

    [Fact]
    public void NippingUpAUnion_LapsesItsLinesAndNoOthers()
    {
        var granted = Granted(Settled(Filter()));
        var after = Of(granted with { JointStates = [.. granted.JointStates, State(FeedUnion, JointStage.Tightened, 60)] });
        Assert.Equal(["joint feed-union", "line feed-dry"], after.Lines.Where(l => l.HasLapsed).Select(l => l.Ground.Line.ToString()));
        Assert.Equal("feed-union was worked on after it: feed-union tightened", Line(after, "joint feed-union").Why);
        Assert.True(Line(after, "joint feed-union").CanBeGranted);
        Assert.True(Of(Granted(granted with { JointStates = [.. granted.JointStates, State(FeedUnion, JointStage.Tightened, 40)] })).IsGranted);
    }

    [Fact]
    public void ASwappedPieceInside_LapsesTheSpaceAlone()
    {
        var granted = Granted(Settled(Filter()));
        var after = Of(granted with { Placings = [.. granted.Placings, new Placed(FactId.New(), Bench.At(60), "bench", new PieceTag("E-2"), Element)] });
        var lapsed = Assert.Single(after.Lines, l => l.HasLapsed);
        Assert.Equal("space bowl", lapsed.Ground.Line.ToString());
        Assert.Contains("cap-on is not signed, or no longer stands", lapsed.Why, StringComparison.Ordinal);
        Assert.False(lapsed.CanBeGranted);
    }

    [Fact]
    public void AnotherPurpose_LapsesEveryLine_AndADepartureForTheOldOneIsMissing()
    {
        var granted = Granted(Settled(Filter()));
        var working = Of(granted with { Engine = granted.Engine with { Purpose = Purpose.Working } });
        Assert.All(working.Lines, l => Assert.True(l.HasLapsed));
        Assert.Contains("it stands for stand-run, and the engine is for working; to undo it: drill and wire", Line(working, $"departure {Wire}").Why, StringComparison.Ordinal);
        Assert.Equal("return-union is tightened and not locked", Line(working, "joint return-union").Ground.Missing);
        Assert.DoesNotContain(working.Lines, l => l.Ground.Line.Name == "extinguisher");
        Assert.NotNull(Of(granted with { Engine = granted.Engine with { Purpose = Purpose.Licensed } }).NotGrantedHere);
        Assert.NotNull(Of(granted with { Engine = granted.Engine with { Purpose = Purpose.Display } }).NotGrantedHere);
    }

    [Fact]
    public void AVerdictThatTurns_LapsesItsLine()
    {
        var key = new LineKey(LineKind.Oil, "hot idle");
        var record = Filter() with { Permissions = [new PermissionLine(FactId.New(), Bench.At(50), "owner", key, Purpose.StandRun)] };
        Assert.True(Line(Of(record, new PermissionGround(key, "hot idle", null, [])), "oil hot idle").IsGranted);
        var turned = Line(Of(record, new PermissionGround(key, "hot idle", "main gauge too low", [])), "oil hot idle");
        Assert.True(turned.HasLapsed);
        Assert.Equal("main gauge too low", turned.Why);
    }

    [Fact]
    public void PurposeChange_ListsFirstWhatNoLongerStands_WithTheCostOfUndoingIt()
    {
        var filter = Filter();
        var record = Granted(Settled(filter with
        {
            Signatures = [.. filter.Signatures, new Signature(FactId.New(), Bench.At(9), "owner", new StepName("unions"))],
            Departures =
            [
                .. filter.Departures,
                new Departure(FactId.New(), Bench.At(6), "owner", "paper element", "none of felt") { Piece = Tag, Purposes = [Purpose.Display, Purpose.StandRun], Undoing = "fit a felt one" },
                new Departure(FactId.New(), Bench.At(6), "owner", "of a piece elsewhere", "so") { Piece = new PieceTag("E-2"), Purposes = [Purpose.StandRun] },
                new Departure(FactId.New(), Bench.At(6), "owner", "bare cap", "no paint") { Item = WorkItem.Of(Cap), Purposes = [Purpose.Working] },
            ],
        }));
        var change = PurposeChange.Of(CloseUp.Of(Plan.Of(record), new(Bench.At(100).ToInstant())), Purpose.Working);
        Assert.Equal(["paper element", "no wire on the return union"], change.Falls.Select(f => f.Departure.What));
        Assert.Equal([["unions", "cap-on", "element-in"], ["unions"]], change.Falls.Select(f => f.Cost.Steps.Select(s => s.Text)));
        Assert.Contains("cap washer", change.Falls[0].Cost.Consumables);
        Assert.Equal("bare cap", Assert.Single(change.Comes).What);
        Assert.Equal(record.Permissions.Count, change.Lapses.Count);
        Assert.Equal(["cap-on", "element-in", "unions"], change.AllUndone.Steps.Select(s => s.Text).Order(StringComparer.Ordinal));
        Assert.Equal(30, change.AllUndone.Minutes);
    }
}
