using CsCheck;
using NodaTime;
using Thoubook.Record;
using Thoubook.Record.Closing;
using Thoubook.Record.Documents;
using Thoubook.Record.Quantities;

namespace Thoubook.Files.Tests.EngineFiles;

/// <summary>What an engine is closed up by, at random, laid over an engine at random: every section and every key of it, there or not.</summary>
internal static class RandomClosings
{
    private static readonly Gen<string?> Notes = Gen.Null(RandomRecords.Texts);

    private static readonly Gen<IReadOnlyList<string>> Lists = RandomRecords.Texts.List[0, 3].Select(l => (IReadOnlyList<string>)l);

    private static readonly Gen<Quantity?> Times = Gen.Select(Gen.Bool, Gen.Int[1, 600], Gen.OneOf(Gen.Const("min"), Gen.Const("h"), Gen.Const("s"))).Select((has, n, unit) => has ? Read($"{n} {unit}", QuantityKind.Time) : null);

    private static readonly Gen<Quantity?> Applied = Gen.Int[0, 4].Select(i => i switch { 0 => null, 1 => Read("60 lbf in", null), 2 => Read("1 1/2 in", null), 3 => Read("3 mm", null), _ => Read("2.5 thou", null) });

    public static Gen<EngineRecord> Records { get; } = RandomRecords.Records.SelectMany(Over);

    private static Gen<EngineRecord> Over(EngineRecord record) =>
        from described in Described(record)
        from facts in Facts(described)
        select facts;

    private static Gen<EngineRecord> Described(EngineRecord record) =>
        from states in Lists
        from partNotes in Gen.Select(Notes, Gen.Bool, Lists).List[record.Parts.Count]
        from spaces in Gen.Select(Notes, Gen.Bool, Some(record.Parts.Select(p => p.Name)), Notes).List[0, 3]
        let spaceNames = Enumerable.Range(0, spaces.Count).Select(i => new SpaceName($"space/No_{i}")).ToList()
        let twoParts = record.Parts.Count > 1
        from joints in Gen.Select(Notes, Gen.Int[0, 9], Notes, Notes, Gen.Bool, Lists).List[0, twoParts ? 3 : 0]
        let jointNames = Enumerable.Range(0, joints.Count).Select(i => new JointName($"studs-{i}")).ToList()
        from steps in Steps(record, spaceNames, jointNames)
        from groups in Gen.Select(Notes, Notes).List[0, twoParts ? 2 : 0]
        from tools in Gen.Select(RandomRecords.Texts, Gen.Select(Notes, Notes, Notes, Notes)).List[0, 3]
        from lines in Gen.Select(Notes, Gen.Bool, Some(Enum.GetValues<Purpose>()), Notes).List[0, 3]
        let source = record.Documents.Count == 0 ? null : new Citation(record.Documents[0].Name, "row 7")
        select record with
        {
            Engine = record.Engine with { States = states },
            Parts = [.. record.Parts.Zip(partNotes, (part, n) => part with { DeletedBy = n.Item1, FunctionUnknown = n.Item2, Asks = n.Item3 })],
            Spaces = [.. spaces.Select((s, i) => new Space(spaceNames[i]) { What = s.Item1, In = s.Item2 && i > 0 ? spaceNames[i - 1] : null, Parts = s.Item3, Note = s.Item4 })],
            Joints = [.. joints.Select((j, i) => new Joint(jointNames[i])
            {
                Parts = [.. record.Parts.Take(2).Select(p => p.Name)],
                In = j.Item5 && spaceNames.Count > 0 ? spaceNames[^1] : null,
                Thread = j.Item1,
                Number = j.Item2 == 0 ? null : j.Item2,
                Tightening = j.Item3,
                Locking = j.Item4,
                Sealing = j.Item1,
                Inspected = j.Item5,
                Asks = j.Item6,
                Source = source,
                Note = j.Item4,
            })],
            Steps = steps,
            Together = [.. groups.Select((g, i) => new Together(new TogetherName($"group-{i}")) { Parts = [.. record.Parts.Select(p => p.Name)], Why = g.Item1, Note = g.Item2 })],
            Tools = [.. tools.Select((t, i) => new KeptTool(new ToolName($"{i} {RandomRecords.Label(t.Item1)}")) { What = t.Item2.Item1, Made = t.Item2.Item2, Kept = t.Item2.Item3, Note = t.Item2.Item4 })],
            PermissionItems = [.. lines.Select((l, i) => new PermissionItem(new PermissionName($"line-{i}"))
            {
                What = l.Item1,
                On = l.Item2 ? [WorkItem.Of(record.Parts[0].Name), .. jointNames.Select(WorkItem.Of), .. steps.Select(s => WorkItem.Of(s.Name))] : [],
                Purposes = l.Item3,
                Note = l.Item4,
            })],
        };

    private static Gen<List<Step>> Steps(EngineRecord record, List<SpaceName> spaces, List<JointName> joints)
    {
        var figure = record.Dimensions.Concat<Record.Measures.Figure>(record.Fits).Select(f => f.Name).FirstOrDefault();
        return (from said in Gen.Select(Notes, Lists, Notes, Lists, Notes)
                from kind in Gen.Enum<StepKind>()
                from attitude in Gen.Nullable(Gen.Enum<Attitude>())
                from brings in Gen.Nullable(Gen.Enum<JointStage>())
                from times in Gen.Select(Times, Times)
                from people in Gen.Int[1, 4]
                from places in Some(record.Parts.Select(p => p.Name))
                from works in Some(joints)
                from flags in Gen.Select(Gen.Bool, Gen.Bool, Gen.Bool)
                from hold in Gen.Select(Gen.Enum<HoldKind>(), RandomRecords.Texts, Gen.Bool)
                select new Step(default)
                {
                    Kind = kind,
                    What = said.Item1,
                    Tools = said.Item2,
                    Photograph = said.Item3,
                    Spoils = said.Item4,
                    Note = said.Item5,
                    Attitude = attitude,
                    Time = times.Item1,
                    Cure = times.Item2,
                    Open = flags.Item3 ? Read("99 h", QuantityKind.Time) is var day && times.Item2 is { } cure && cure.Si > day.Si ? null : Read("99 h", QuantityKind.Time) : null,
                    People = people,
                    // A step that closes a space lies in none of what is in it.
                    Needs = places,
                    Joints = works,
                    Brings = works.Count > 0 ? brings : null,
                    In = flags.Item1 && spaces.Count > 0 ? [spaces[0]] : [],
                    Measures = figure == default ? [] : [figure],
                    Holds = figure == default || hold.Item1 is not (HoldKind.Fit or HoldKind.Dimension)
                        ? [new HoldPoint(hold.Item1 is HoldKind.Fit or HoldKind.Dimension ? HoldKind.Judgement : hold.Item1, hold.Item2) { Part = hold.Item3 ? record.Parts[0].Name : null }]
                        : [new HoldPoint(hold.Item1, hold.Item3 ? figure.ToString() : hold.Item2) { Figure = figure }],
                    SecondLook = flags.Item2,
                }).List[0, 4].Select(steps => steps.Select((s, i) => s with
                {
                    Name = new StepName($"pump/step_{i}"),
                    After = i == 0 ? [] : [new ComesAfter(new StepName("pump/step_0"), s.Note)],
                    Closes = s.Kind == StepKind.Close && s.Joints.Count == 0 && s.In.Count == 0 ? [new SpaceName($"own-{i}")] : [],
                    Places = s.Kind == StepKind.Place ? s.Needs : [],
                }).ToList());
    }

    private static Gen<EngineRecord> Facts(EngineRecord record) =>
        from ids in Gen.Guid.Select(g => new FactId(g)).List[14]
        from at in RandomRecords.Times
        from who in RandomRecords.Texts
        from notes in Notes.List[4]
        from applied in Applied
        from stage in Gen.Enum<JointStage>()
        from deadline in Gen.Enum<Deadline>()
        from kind in Gen.Enum<DepartureKind>()
        from purposes in Some(Enum.GetValues<Purpose>())
        from flags in Gen.Select(Gen.Bool, Gen.Bool, Gen.Bool)
        from line in Gen.Select(Gen.Enum<LineKind>(), RandomRecords.Texts)
        let joint = record.Joints.Select(j => (JointName?)j.Name).FirstOrDefault()
        let step = record.Steps.Count == 0 ? null : record.Steps[0]
        let relies = flags.Item1 ? record.Placings.Select(p => p.Id).ToArray() : []
        let item = joint is { } j && flags.Item2 ? WorkItem.Of(j) : flags.Item3 ? new WorkItem(ItemKind.Count, "plugs: of the gallery") : (WorkItem?)null
        select record with
        {
            JointStates = joint is { } of ? [new JointState(ids[0], at, who, of, stage) { Applied = applied, ReliesOn = relies, Note = notes[0] }] : [],
            Acceptances = step is null ? [] : [new Accepted(ids[1], at, who, step.Name, step.Holds[0].What) { Why = notes[1], ReliesOn = relies }],
            Signatures = step is null ? [] : [new Signature(ids[2], at, who, step.Name) { SecondLook = flags.Item1, Photographed = flags.Item2, Note = notes[2], ReliesOn = relies }],
            Departures =
            [
                new Departure(ids[3], at, who, "wire: not tabs", who)
                {
                    Kind = kind,
                    Piece = flags.Item3 ? record.Pieces[0].Tag : null,
                    Joint = joint,
                    Item = item,
                    Evidence = notes[0],
                    Purposes = purposes,
                    Undoing = notes[1],
                    ReliesOn = relies,
                },
            ],
            Debts = [new Owed(ids[4], at, who, who, deadline) { Item = item, Why = notes[3] }],
            Settlements = flags.Item1 ? [new Settled(ids[5], at, who, ids[4]) { How = notes[2] }] : [],
            Counts = [new Counted(ids[6], at, who, who, 6, flags.Item1 ? CountedWay.Out : CountedWay.In) { Space = record.Spaces.Count == 0 ? null : record.Spaces[0].Name, Note = notes[0] }],
            AsFound =
            [
                new AsFound(ids[7], at, who, who) { Part = record.Parts[0].Name, Value = applied, Words = notes[1], Tag = flags.Item2 ? record.Pieces[0].Tag : null, Skipped = flags.Item3 },
                .. joint is { } found ? [new AsFound(ids[8], at, who, "route of the wire") { Joint = found, Words = notes[2] }] : Array.Empty<AsFound>(),
                .. record.Checks.Select(c => new AsFound(ids[9], at, who, c.Figure.ToString()) { Part = record.Parts[0].Name, Figure = c.Figure, Value = c.Value }),
            ],
            Permissions = [new PermissionLine(ids[10], at, who, new LineKey(line.Item1, line.Item2), record.Engine.Purpose) { ReliesOn = relies, Note = notes[3] }],
            Undoings = [.. record.Steps.Take(1).Select(_ => new Undone(ids[11], at, who, ids[2]) { Why = notes[0] }), new Undone(ids[12], at, who, ids[10])],
        };

    private static Gen<IReadOnlyList<T>> Some<T>(IEnumerable<T> of)
    {
        var all = of.ToList();
        return Gen.Bool.List[all.Count].Select(taken => (IReadOnlyList<T>)[.. all.Where((_, i) => taken[i])]);
    }

    private static Quantity Read(string text, QuantityKind? kind) => QuantityReader.Read(text, kind is null ? ReadingContext.None : new ReadingContext { Kind = kind }).IsOk(out var quantity, out var problems) ? quantity : throw new InvalidOperationException(string.Join('\n', problems));
}
