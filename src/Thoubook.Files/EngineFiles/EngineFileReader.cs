using Thoubook.Files.Text;
using Thoubook.Record;
using Thoubook.Record.Closing;
using Thoubook.Record.Documents;
using Thoubook.Record.Measures;
using Thoubook.Record.Parts;
using Thoubook.Record.Pieces;
using Thoubook.Record.Quantities;

namespace Thoubook.Files.EngineFiles;

/// <summary>Reads the sections of one file, in the order in which they rest on each other.</summary>
/// <param name="root">The file.</param>
/// <param name="problems">Where what is wrong is told.</param>
/// <param name="terms">Who takes it in, and what the workshop holds.</param>
/// <param name="unnamed">The engine of a file that may leave it out; null: it must be named.</param>
internal sealed class EngineFileReader(YamlMap root, ProblemList problems, ImportTerms terms, Engine? unnamed = null)
{
    public const string Everywhere = "everywhere";

    public static readonly IReadOnlyList<string> Sections =
    [
        "engine", "temperatures", "documents", "gauges", "parts", "pieces", "dimensions", "fits", Circuits.Section, Closings.Spaces, Closings.Joints, Closings.Steps,
        Closings.Together, Closings.Tools, Closings.Permission,
        "choices", "placings", "liftings", "readings", "works", "findings", "checks", "decisions", "flow-tests", "calibrations",
        "joint-states", "acceptances", "signatures", "departures", "debts", "settlements", "counts", "undoings", "as-found", "permissions", "strike-outs",
    ];

    private EngineRecord _file = null!;
    private EngineRecord? _known;
    private Scope _scope = null!;

    /// <summary>What the file says; to be trusted only where no problem was met.</summary>
    public EngineRecord Read()
    {
        _scope = new Scope(problems, terms, new EngineRecord(new Engine(default, default)), root);
        foreach (var (key, _) in root.Entries)
        {
            if (!Sections.Contains(key.Value))
                Shape<Engine>.Unknown(key, "an engine file", Sections, _scope);
        }

        _known = Known();
        var engine = Engine();
        Give(new EngineRecord(engine));
        Define();
        Gaps();
        Give(_file with { Circuit = Circuits.Read(_scope) });
        CloseUp();
        FactSections(new FactIds(engine.Name, terms));
        FactChecks.Check(_file, _scope);
        return _file;
    }

    private void Give(EngineRecord file)
    {
        _file = file;
        _scope.Record = Joining.Join(_known, file);
    }

    private EngineRecord? Known() =>
        (root["engine"] as YamlMap)?["name"] is YamlScalar { IsLeftOut: false } written && EngineName.TryRead(written.Value, out var name, out _) ? terms.Known(name) : null;

    private Engine Engine()
    {
        // What the file leaves out stays as the workshop has it: every file must name its engine, and few have more to say of it.
        var engine = _known?.Engine ?? new Engine(default, default);
        _scope.Entry = "engine";
        if (root["engine"] is not { } node)
        {
            if (unnamed is not null)
                return unnamed;
            _scope.Refuse(root, "", "file-engine-missing", "no engine", "An engine file begins with engine: and the keys name and purpose under it.", "Write engine: { name: …, purpose: … }, also where the workshop has the engine already.");
            return engine;
        }

        Definitions.Engine.TryRead(node, engine, _scope, out engine);
        return engine;
    }

    private void Define()
    {
        Give(_file with { Documents = Named<Document, DocumentName>("documents", Definitions.Document, DocumentName.TryRead, name => new Document(name)) });
        Give(_file with { Gauges = Named<Gauge, GaugeTag>("gauges", Definitions.Gauge, GaugeTag.TryRead, tag => new Gauge(tag)) });
        Give(_file with { Parts = Named<Part, PartName>("parts", Definitions.Part, PartName.TryRead, name => new Part(name)) });
        Give(_file with { Pieces = Named<Piece, PieceTag>("pieces", Definitions.Piece, PieceTag.TryRead, tag => new Piece(tag)) });
        if (Group("temperatures") is { } temperatures)
            Give(_file with { Engine = _file.Engine with { Temperatures = Temperatures(temperatures) } });
        Give(_file with { Dimensions = Named<Dimension, FigureName>("dimensions", Definitions.Dimension, OfPart, name => new Dimension(name)) });
        Give(_file with { Fits = Named<Fit, FigureName>("fits", Definitions.Fit, OfPart, name => new Fit(name) { Side = Definitions.UsualSide(default) }, OnlyOnce) });
    }

    private void CloseUp()
    {
        Give(_file with { Spaces = Named<Space, SpaceName>(Closings.Spaces, Closings.Space, SpaceName.TryRead, name => new Space(name)) });
        Give(_file with { Joints = Named<Joint, JointName>(Closings.Joints, Closings.Joint, JointName.TryRead, name => new Joint(name)) });
        Give(_file with { Steps = Named<Step, StepName>(Closings.Steps, Closings.Step, StepName.TryRead, name => new Step(name)) });
        Give(_file with { Together = Named<Together, TogetherName>(Closings.Together, Closings.Group, TogetherName.TryRead, name => new Together(name)) });
        Give(_file with { Tools = Named<KeptTool, ToolName>(Closings.Tools, Closings.Tool, ToolName.TryRead, name => new KeptTool(name)) });
        Give(_file with { PermissionItems = Named<PermissionItem, PermissionName>(Closings.Permission, Closings.PermissionItem, PermissionName.TryRead, name => new PermissionItem(name)) });
        Closings.Check(_file, _scope);
    }

    /// <summary>The entries of a section in which each has a name.</summary>
    private List<T> Named<T, TName>(string section, Shape<T> shape, Forms.Reader<TName> read, Func<TName, T> blank, Func<TName, YamlScalar, bool>? mayBe = null)
        where TName : struct
    {
        var items = new List<T>();
        if (Group(section) is not { } map)
            return items;
        var lines = new Dictionary<TName, int>();
        foreach (var (key, value) in map.Entries)
        {
            _scope.Entry = section;
            if (!read(key.Value.Trim(), out var name, out var problem))
            {
                _scope.Refuse(key, "", problem);
                continue;
            }

            _scope.Begin(key.Value);
            if (!lines.TryAdd(name, key.Line))
            {
                _scope.Refuse(key, "", "file-name-twice", $"{key.What} on line {lines[name]} and again here", $"Each of the {section} stands once.", "Leave one out, or give it the name that was meant.");
                continue;
            }

            if (mayBe is not null && !mayBe(name, key))
                continue;
            var body = value is YamlScalar { IsLeftOut: true } ? new YamlMap([], value.Line, value.Column) : value;
            if (!shape.TryRead(body, blank(name), _scope, out var item))
                _scope.Broken.Add(name);
            items.Add(item);
        }

        _scope.Entry = "";
        return items;
    }

    private YamlMap? Group(string section)
    {
        if (root[section] is not { } node || node is YamlScalar { IsLeftOut: true })
            return null;
        if (node is YamlMap map)
            return map;
        _scope.Entry = "";
        _scope.Refuse(node, section, "file-shape", node.What, $"Under {section} stand names, each with its keys.", "Write name: { key: value }, each on its own line and set in.");
        return null;
    }

    private List<TemperatureState> Temperatures(YamlMap group)
    {
        var states = new List<TemperatureState>();
        foreach (var (key, value) in group.Entries)
        {
            _scope.Entry = key.Value;
            if (value is not YamlMap map)
            {
                _scope.Refuse(value, "", "file-shape", value.What, "A temperature state says how warm it is everywhere, and which parts differ.", "Write { everywhere: 80 °C, part/path: 90 °C }.");
                continue;
            }

            Quantity? everywhere = null;
            var parts = new List<PartTemperature>();
            foreach (var (where, written) in map.Entries)
            {
                var isEverywhere = string.Equals(where.Value, Everywhere, StringComparison.Ordinal);
                PartName? part = null;
                if (!isEverywhere && !References.Part.TryRead(where, "", _scope, out part))
                    continue;
                if (!Forms.Quantity(QuantityKind.Temperature).TryRead(written, where.Value, _scope, out var temperature))
                    continue;
                if (isEverywhere)
                    everywhere = temperature;
                else
                    parts.Add(new PartTemperature(part!.Value, temperature!));
            }

            if (map[Everywhere] is null)
                _scope.Refuse(map, "", "file-key-missing", "nothing", "A temperature state needs everywhere.", "Write everywhere: 80 °C beside the parts that differ.");
            else if (everywhere is not null)
                states.Add(new TemperatureState(key.Value.Trim(), everywhere, parts));
        }

        _scope.Entry = "";
        return states;
    }

    private bool OfPart(string text, out FigureName name, [System.Diagnostics.CodeAnalysis.NotNullWhen(false)] out Problem? problem)
    {
        if (FigureName.TryRead(text, out name, out problem) && !_scope.Parts.Contains(name.Part))
            problem = References.Missing("part", name.Part.Path, _scope.Parts.Select(p => p.Path));
        return problem is null;
    }

    private bool OnlyOnce(FigureName name, YamlScalar key)
    {
        if (_scope.Record.Index.Figure(name) is not Dimension)
            return true;
        var line = Group("dimensions")?.Entries.FirstOrDefault(e => e.Key.Value.Trim() == name.ToString()).Key?.Line;
        _scope.Refuse(key, "", "file-name-twice", $"{key.What}, which is a dimension{(line is null ? " in the workshop" : $" on line {line}")}", "Dimensions and fits share one set of names.", "Give one of them another name.");
        return false;
    }

    private void Gaps()
    {
        var fits = _file.Fits.ToList();
        var written = Group("fits")?.Entries.ToDictionary(e => e.Key.Value.Trim(), e => e.Value, StringComparer.Ordinal) ?? [];
        for (var i = 0; i < fits.Count; i++)
        {
            _scope.Entry = fits[i].Name.ToString();
            if ((written[_scope.Entry] as YamlMap)?[Definitions.GapKey] is not { } gap || gap is YamlScalar { IsLeftOut: true })
                continue;
            if (gap is not YamlScalar text)
                _scope.Refuse(gap, Definitions.GapKey, "file-shape", gap.What, "A gap is one line, such as body.depth - driver.width.", "Write it after the colon.");
            else if (GapText.Read(text.Value, fits[i], _scope.Record).IsOk(out var gapTerms, out var refusals))
                fits[i] = fits[i] with { Gap = gapTerms };
            else
                refusals.ToList().ForEach(p => _scope.Refuse(gap, Definitions.GapKey, p));
        }

        _scope.Entry = "";
        Give(_file with { Fits = fits });
    }

    private void FactSections(FactIds ids)
    {
        Give(_file with { Choices = Facts.Choices.Read(root, _scope, ids) });
        var placings = Facts.Placings.Read(root, _scope, ids);
        var liftings = Facts.Liftings.Read(root, _scope, ids);
        Give(_file with { Placings = placings, Liftings = liftings });
        var pieces = new PiecesOfReadings(_scope, ids);
        var readings = Facts.Readings.Read(root, _scope, ids, pieces.Fill);
        Give(_file with { Pieces = [.. _file.Pieces, .. pieces.Made], Choices = [.. _file.Choices, .. pieces.Choices] });
        Give(_file with
        {
            Readings = readings,
            Works = Facts.Works.Read(root, _scope, ids),
            Findings = Facts.Findings.Read(root, _scope, ids),
            Checks = Facts.Checks.Read(root, _scope, ids),
            Decisions = Facts.Decisions.Read(root, _scope, ids),
            FlowTests = Facts.FlowTests.Read(root, _scope, ids),
            Calibrations = Facts.Calibrations.Read(root, _scope, ids),
            JointStates = ClosingFacts.JointStates.Read(root, _scope, ids),
            Acceptances = ClosingFacts.Acceptances.Read(root, _scope, ids),
            Signatures = ClosingFacts.Signatures.Read(root, _scope, ids),
            Departures = ClosingFacts.Departures.Read(root, _scope, ids),
            Debts = ClosingFacts.Debts.Read(root, _scope, ids),
            Settlements = ClosingFacts.Settlements.Read(root, _scope, ids),
            Counts = ClosingFacts.Counts.Read(root, _scope, ids),
            Undoings = ClosingFacts.Undoings.Read(root, _scope, ids),
            AsFound = ClosingFacts.AsFound.Read(root, _scope, ids),
            Permissions = ClosingFacts.Permissions.Read(root, _scope, ids),
            StrikeOuts = Facts.StrikeOuts.Read(root, _scope, ids),
        });
    }
}
