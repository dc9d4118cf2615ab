using Thoubook.Files.Text;
using Thoubook.Record;
using Thoubook.Record.Closing;
using Thoubook.Record.Quantities;

namespace Thoubook.Files.EngineFiles;

/// <summary>The keys of what an engine is closed up by: spaces, joints and steps.</summary>
internal static class Closings
{
    public const string Spaces = "spaces";
    public const string Joints = "joints";
    public const string Steps = "steps";
    public const string Together = "together";
    public const string Tools = "tools";
    public const string Permission = "permission";

    private static readonly Form<Quantity?> Time = Forms.Quantity(QuantityKind.Time);

    private static readonly Form<IReadOnlyList<PartName>> Parts = Forms.List(Required(References.Part));

    private static readonly Form<IReadOnlyList<FigureName>> Figures = Forms.List(Required(References.Figure));

    private static readonly Form<StepName> StepWritten = Forms.Name<StepName>(StepName.TryRead, s => s.Text);

    private static readonly Form<IReadOnlyList<SpaceName>> SpacesWritten = Forms.List(Forms.Name<SpaceName>(SpaceName.TryRead, s => s.Text));

    private static readonly Form<IReadOnlyList<JointName>> JointsWritten = Forms.List(Forms.Name<JointName>(JointName.TryRead, j => j.Text));

    private static readonly Form<SpaceName?> SpaceOrNone = new ScalarForm<SpaceName?>((text, _) => SpaceName.TryRead(text, out var name, out var problem) ? name : problem, name => name?.Text);

    public static readonly Shape<Space> Space = new Shape<Space>("a space")
        .Key("what", Forms.Text, s => s.What, (s, v) => s with { What = v })
        .Key("in", SpaceOrNone, s => s.In, (s, v) => s with { In = v })
        .Key("parts", Parts, s => s.Parts, (s, v) => s with { Parts = v })
        .Key("note", Forms.Text, s => s.Note, (s, v) => s with { Note = v });

    public static readonly Shape<Joint> Joint = new Shape<Joint>("a joint")
        .Key("parts", Parts, j => j.Parts, (j, v) => j with { Parts = v }, Need.Required)
        .Key("in", SpaceOrNone, j => j.In, (j, v) => j with { In = v })
        .Key("thread", Forms.Text, j => j.Thread, (j, v) => j with { Thread = v })
        .Key("number", Forms.Whole<int?>(n => n, n => n), j => j.Number, (j, v) => j with { Number = v })
        .Key("tightening", Forms.Text, j => j.Tightening, (j, v) => j with { Tightening = v })
        .Key("locking", Forms.Text, j => j.Locking, (j, v) => j with { Locking = v })
        .Key("sealing", Forms.Text, j => j.Sealing, (j, v) => j with { Sealing = v })
        .Key("inspected", Forms.YesNo, j => j.Inspected, (j, v) => j with { Inspected = v })
        .Key("asks", Forms.Texts, j => j.Asks, (j, v) => j with { Asks = v })
        .Key("document", Forms.Citation, j => j.Source, (j, v) => j with { Source = v })
        .Key("note", Forms.Text, j => j.Note, (j, v) => j with { Note = v });

    public static readonly Shape<HoldPoint> Hold = new Shape<HoldPoint>("a hold point")
        .Key("kind", Forms.Word(HoldKind.Judgement), h => h.Kind, (h, v) => h with { Kind = v })
        .Key("of", References.Figure, h => h.Figure, (h, v) => h with { Figure = v, What = v.ToString()! })
        .Key("what", Forms.Text, h => h.What == h.Figure?.ToString() ? null : h.What, (h, v) => h with { What = v ?? h.What })
        .Key("part", References.Part, h => h.Part, (h, v) => h with { Part = v });

    public static readonly Shape<ComesAfter> After = new Shape<ComesAfter>("a step that comes before")
        .Key("step", StepWritten, a => a.Step, (a, v) => a with { Step = v }, Need.Required)
        .Key("why", Forms.Text, a => a.Why, (a, v) => a with { Why = v }, Need.Required);

    public static readonly Shape<Step> Step = new Shape<Step>("a step")
        .Key("kind", Forms.Word(StepKind.Place), s => s.Kind, (s, v) => s with { Kind = v })
        .Key("what", Forms.Text, s => s.What, (s, v) => s with { What = v })
        .Key("attitude", Forms.WordOrNone<Attitude>(), s => s.Attitude, (s, v) => s with { Attitude = v })
        .Key("tools", Forms.Texts, s => s.Tools, (s, v) => s with { Tools = v })
        .Key("time", Time, s => s.Time, (s, v) => s with { Time = v })
        .Key("cure", Time, s => s.Cure, (s, v) => s with { Cure = v })
        .Key("open", Time, s => s.Open, (s, v) => s with { Open = v })
        .Key("people", Forms.Whole(n => n, n => n == 1 ? null : n), s => s.People, (s, v) => s with { People = v })
        .Key("places", Parts, s => s.Places, (s, v) => s with { Places = v })
        .Key("needs", Parts, s => s.Needs, (s, v) => s with { Needs = v })
        .Key("joints", JointsWritten, s => s.Joints, (s, v) => s with { Joints = v })
        .Key("brings", Forms.WordOrNone<JointStage>(), s => s.Brings, (s, v) => s with { Brings = v })
        .Key("in", SpacesWritten, s => s.In, (s, v) => s with { In = v })
        .Key("closes", SpacesWritten, s => s.Closes, (s, v) => s with { Closes = v })
        .Key("measures", Figures, s => s.Measures, (s, v) => s with { Measures = v })
        .Key("holds", Forms.List(new GroupForm<HoldPoint>(Hold, new HoldPoint(default, ""))), s => s.Holds, (s, v) => s with { Holds = v })
        .Key("after", Forms.List(new AfterForm()), s => s.After, (s, v) => s with { After = v })
        .Key("second-look", Forms.YesNo, s => s.SecondLook, (s, v) => s with { SecondLook = v })
        .Key("photograph", Forms.Text, s => s.Photograph, (s, v) => s with { Photograph = v })
        .Key("spoils", Forms.Texts, s => s.Spoils, (s, v) => s with { Spoils = v })
        .Key("document", Forms.Citation, s => s.Source, (s, v) => s with { Source = v })
        .Key("note", Forms.Text, s => s.Note, (s, v) => s with { Note = v });

    public static readonly Shape<Together> Group = new Shape<Together>("a group of parts")
        .Key("parts", Parts, t => t.Parts, (t, v) => t with { Parts = v }, Need.Required)
        .Key("why", Forms.Text, t => t.Why, (t, v) => t with { Why = v })
        .Key("note", Forms.Text, t => t.Note, (t, v) => t with { Note = v });

    public static readonly Shape<KeptTool> Tool = new Shape<KeptTool>("a tool")
        .Key("what", Forms.Text, t => t.What, (t, v) => t with { What = v })
        .Key("made", Forms.Text, t => t.Made, (t, v) => t with { Made = v })
        .Key("kept", Forms.Text, t => t.Kept, (t, v) => t with { Kept = v })
        .Key("note", Forms.Text, t => t.Note, (t, v) => t with { Note = v });

    public static readonly Shape<PermissionItem> PermissionItem = new Shape<PermissionItem>("a line of the permission to run")
        .Key("what", Forms.Text, p => p.What, (p, v) => p with { What = v })
        .Key("on", Forms.List(Required(References.Item)), p => p.On, (p, v) => p with { On = v })
        .Key("purposes", Forms.List(Forms.OneWord<Purpose>()), p => p.Purposes, (p, v) => p with { Purposes = v })
        .Key("note", Forms.Text, p => p.Note, (p, v) => p with { Note = v });

    /// <summary>Tells what is wrong in the descriptions, each at its line. What is wrong in the workshop's own and is not in this file is left.</summary>
    public static void Check(EngineRecord file, Scope scope)
    {
        if (file.Steps.Count + file.Joints.Count + file.Spaces.Count + file.Together.Count == 0)
            return;
        foreach (var problem in ClosingCheck.Of(scope.Record))
        {
            var section = problem.Of switch { StepName => Steps, JointName => Joints, TogetherName => Together, _ => Spaces };
            var name = problem.Of.ToString()!;
            if (scope.Broken.Contains(problem.Of) || scope.Root[section] is not YamlMap map || map.Entries.FirstOrDefault(e => e.Key.Value.Trim() == name) is not { Key: not null } entry)
                continue;
            scope.Entry = name;
            scope.Refuse((entry.Value as YamlMap)?[problem.Key] ?? entry.Key, problem.Key, problem.What);
        }

        scope.Entry = "";
    }

    private static RequiredForm<T> Required<T>(Form<T?> form)
        where T : struct => new(form);

    /// <summary>A step that comes first, by its name alone or with the reason.</summary>
    private sealed class AfterForm : Form<ComesAfter>
    {
        public override bool TryRead(YamlNode node, string key, Scope scope, out ComesAfter value)
        {
            value = new(default, null);
            if (node is not YamlScalar)
                return After.TryRead(node, value, scope, out value);
            var isGood = StepWritten.TryRead(node, key, scope, out var name);
            value = new(name, null);
            return isGood;
        }

        public override YamlNode? Write(ComesAfter value, Scope scope) => value.Why is null ? StepWritten.Write(value.Step, scope) : After.Write(value, scope, isOneLine: true);
    }

    /// <summary>In a list, where nothing may stand for none.</summary>
    private sealed class RequiredForm<T>(Form<T?> form) : Form<T>
        where T : struct
    {
        public override bool TryRead(YamlNode node, string key, Scope scope, out T value)
        {
            var isGood = form.TryRead(node, key, scope, out var read);
            value = read ?? default;
            return isGood && read is not null;
        }

        public override YamlNode? Write(T value, Scope scope) => form.Write(value, scope);
    }
}
