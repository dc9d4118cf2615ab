using Thoubook.Files.Text;
using Thoubook.Record;
using Thoubook.Record.Quantities;

namespace Thoubook.Files.EngineFiles;

/// <summary>What is known while a file is read or written: the record so far, the person's terms, and the problems met.</summary>
internal sealed class Scope(ProblemList problems, ImportTerms terms, EngineRecord record, YamlMap root)
{
    private readonly Dictionary<FigureName, Form<Quantity?>> _values = [];
    private HashSet<PartName>? _parts;
    private int _before;

    public ProblemList Problems { get; } = problems;

    public ImportTerms Terms { get; } = terms;

    /// <summary>The file as a whole.</summary>
    public YamlMap Root { get; } = root;

    /// <summary>What the workshop holds of this engine, and over it what this file has given so far.</summary>
    public EngineRecord Record
    {
        get;
        set
        {
            field = value;
            _parts = null;
            _values.Clear();
        }
    } = record;

    /// <summary>The entry that is being read, for messages.</summary>
    public string Entry { get; set; } = "";

    /// <summary>Whether something in this entry could not be read, so that what rests on it cannot be judged.</summary>
    public bool EntryIsBroken => Problems.Count > _before;

    public void Begin(string entry)
    {
        Entry = entry;
        _before = Problems.Count;
    }

    /// <summary>The units that the heads of a table give for bare numbers, by key.</summary>
    public Dictionary<string, TradeUnit> HeadUnits { get; } = [];

    /// <summary>Where each fact of the file stands.</summary>
    public Dictionary<FactId, YamlNode> Facts { get; } = [];

    /// <summary>Names whose own entries could not be read: they are there, and what rests on them is not complained of as well.</summary>
    public HashSet<object> Broken { get; } = [];

    /// <summary>The named parts and all those that they lie in.</summary>
    public IReadOnlySet<PartName> Parts => _parts ??= PartsOf(Record);

    /// <summary>The form of the values of a figure; made once, for there may be very many of them.</summary>
    public Form<Quantity?> ValueOf(FigureName figure, Func<EngineRecord, Form<Quantity?>> make)
    {
        if (!_values.TryGetValue(figure, out var form))
            _values[figure] = form = make(Record);
        return form;
    }

    public void Refuse(YamlNode at, string key, Problem problem) =>
        Problems.Add(Math.Max(1, at.Line), Math.Max(1, at.Column), problem with { Field = Field(key) });

    public void Refuse(YamlNode at, string key, string code, string found, string allowed, string doThis) =>
        Refuse(at, key, new Problem(code, "", found, allowed, doThis));

    /// <summary>Reads a quantity; a question or a refusal becomes a problem of this line.</summary>
    public Quantity? Quantity(string text, YamlNode at, string key, ReadingContext context)
    {
        if (HeadUnits.TryGetValue(key, out var unit))
        {
            if (context.Kind is { } kind && unit.Kind != kind)
            {
                Refuse(at, key, "table-head-kind", $"{unit} over the column", $"This one is of kind {kind.Word()}.", "Write its unit in the cell and none in the head, or put these into a table of their own.");
                return null;
            }

            context = context with { BareUnit = unit };
        }

        context = context with { Decimal = Terms.Decimal, Confirmed = FileQuestions.ConfirmedFor(at.Line, Terms.Confirmed) };
        if (QuantityReader.Read(text, context).IsOk(out var quantity, out var refusals))
            return quantity;
        foreach (var problem in refusals)
            Refuse(at, key, FileQuestions.OnLine(problem, at.Line));
        return null;
    }

    /// <summary>The context in which a quantity of this kind is read where only the kind is known.</summary>
    public static ReadingContext Of(QuantityKind kind) => new() { Kind = kind };

    public string Field(string key) => (Entry, key) switch
    {
        ("", _) => key,
        (_, "") => Entry,
        _ => $"{Entry}, {key}",
    };

    private static HashSet<PartName> PartsOf(EngineRecord record)
    {
        var parts = new HashSet<PartName>();
        foreach (var named in record.Parts)
        {
            for (PartName? part = named.Name; part is { } name && parts.Add(name); part = name.Parent)
            {
            }
        }

        return parts;
    }
}
