using Thoubook.Record;
using Thoubook.Record.Closing;
using Thoubook.Record.Quantities;

namespace Thoubook.Workshop;

public sealed partial class OpenWorkshop
{
    /// <summary>Signs a step. What it wants first is refused thing by thing, unless a departure or a debt covers it.</summary>
    public Outcome<Signature> Sign(SignEntry entry) => Engine(entry.Engine).Then(record =>
    {
        if (!Step(record, entry.Step, "step").IsOk(out var step, out var problems))
            return new Outcome<Signature>.Refused(problems);
        var (id, at) = Signed(entry);
        var signature = new Signature(id, at, entry.By, step.Name) { SecondLook = entry.SecondLook, Photographed = entry.Photographed, Note = Blank(entry.Note) };
        if (record.Index.Fact(id) is not null)
            return Write(entry, record, signature);
        List<Fact> placed = entry.Placing ? [.. ToPlace(step, record).Select(c => new Placed(MadeWith(id, $"{c.Part} placed with "), at, entry.By, c.Piece, c.Part))] : [];
        var supposed = placed.Count == 0 ? record : record with { Placings = [.. record.Placings, .. placed.Cast<Placed>()] };
        return (placed.Count == 0 ? ClosingUp(entry.Engine) : ClosingUp(supposed)).Then(closing =>
        {
            var refused = entry.SecondLook ? SecondLook(step, signature, closing) : FirstLook(step, signature, closing);
            return refused.Count > 0
                ? new Outcome<Signature>.Refused(refused)
                : Write(entry, record, signature with { ReliesOn = closing.ReliedOn(step.Name) }, change => change with { Facts = placed });
        });
    });

    /// <summary>Writes down how far a joint is made. It relies on the pieces that it holds together.</summary>
    public Outcome<JointState> MakeJoint(JointEntry entry) => Engine(entry.Engine).Then(record =>
    {
        var asked = new Asked(record);
        var joint = asked.Take(Joint(record, entry.Joint, "joint"));
        var applied = Blank(entry.Applied) is { } typed ? asked.Take(Read(typed, new ReadingContext { Confirmed = entry.Confirmed }, "applied")) : null;
        if (applied is { Kind: not (QuantityKind.Torque or QuantityKind.Length or QuantityKind.Angle or QuantityKind.Force) })
            asked.Refuse(new("applied-kind", "applied", applied.Text, "What is put on a joint is a torque, a stretch, an angle or a load.", "Write it with its unit, such as 18 lbf ft."));
        if (asked.Problems.Count > 0)
            return asked.Refused<JointState>();
        var (id, at) = Signed(entry);
        return Write(entry, record, new JointState(id, at, entry.By, joint!.Name, entry.Stage)
        {
            Applied = applied,
            Note = Blank(entry.Note),
            ReliesOn = [.. joint.Parts.Distinct().Order().Select(record.Index.PlacedIn).OfType<Placed>().Select(p => p.Id)],
        });
    });

    /// <summary>Accepts a hold point by name. One on a figure that its verdict does not pass says why.</summary>
    public Outcome<Accepted> Accept(AcceptEntry entry) => ClosingUp(entry.Engine).Then(closing =>
    {
        var record = closing.Plan.Record;
        if (!Step(record, entry.Step, "step").IsOk(out var step, out var problems))
            return new Outcome<Accepted>.Refused(problems);
        var points = step.Holds.Select(h => h.What).ToList();
        if (step.Holds.FirstOrDefault(h => string.Equals(h.What, entry.Hold.Trim(), StringComparison.OrdinalIgnoreCase)) is not { } hold)
        {
            return new Problem("unknown-hold", "hold", $"\"{entry.Hold}\"", points.Count == 0 ? $"{step.Name} has no hold points." : $"{step.Name} has the hold points: {string.Join("; ", points)}.", Nearest.Advice(entry.Hold, points, "Name one of them."));
        }

        if (hold.Figure is not null && Blank(entry.Why) is null && closing.WantOf(step.Name, hold) is { } want)
            return new Problem("reason-missing", "why", "nothing", $"{want.Why}. What is accepted on judgement says why.", "Give the reason, or measure it.");
        var (id, at) = Signed(entry);
        return Write(entry, record, new Accepted(id, at, entry.By, step.Name, hold.What)
        {
            Why = Blank(entry.Why),
            ReliesOn = [.. (hold.Figure is { } figure ? Behind(record, null, record.Index.Figure(figure)) : Around(hold, step, record)).Distinct()],
        });
    });

    /// <summary>Writes down a departure from the maker's method, before or after the fact.</summary>
    public Outcome<Departure> Depart(DepartureEntry entry) => Engine(entry.Engine).Then(record =>
    {
        var asked = new Asked(record);
        var what = asked.Words(entry.What, "what", "What is done otherwise than the maker's method.");
        var why = asked.Words(entry.Why, "why", "The reason is kept beside it.");
        var piece = Blank(entry.Piece) is null ? null : KnownPiece(asked, record, entry.Piece!);
        var joint = Blank(entry.Joint) is { } named ? asked.Take(Joint(record, named, "joint")) : null;
        var item = Item(asked, record, entry.Item);
        if (asked.Problems.Count == 0 && piece is null && joint is null && item is null)
            asked.Refuse(new("departure-of-nothing", "piece", "neither a piece nor a joint", "A departure belongs to a piece, with which it travels, or to a joint.", "Name one of them, or what is closed over."));
        if (asked.Problems.Count > 0)
            return asked.Refused<Departure>();
        var (id, at) = Signed(entry);
        return Write(entry, record, new Departure(id, at, entry.By, what, why)
        {
            Kind = entry.Kind,
            Piece = piece,
            Joint = joint?.Name,
            Item = item,
            Evidence = Blank(entry.Evidence),
            Purposes = entry.Purposes.Count > 0 ? [.. entry.Purposes.Distinct().Order()] : [record.Engine.Purpose],
            Undoing = Blank(entry.Undoing),
        });
    });

    /// <summary>Puts something off with a deadline.</summary>
    public Outcome<Owed> Owe(OwedEntry entry) => Engine(entry.Engine).Then(record =>
    {
        var asked = new Asked(record);
        var what = asked.Words(entry.What, "what", "What is still to be done.");
        var item = Item(asked, record, entry.Item);
        if (asked.Problems.Count > 0)
            return asked.Refused<Owed>();
        var (id, at) = Signed(entry);
        return Write(entry, record, new Owed(id, at, entry.By, what, entry.Deadline) { Item = item, Why = Blank(entry.Why) });
    });

    /// <summary>Writes down that what was owed is done.</summary>
    public Outcome<Settled> Settle(SettleEntry entry) => Engine(entry.Engine).Then(record =>
    {
        if (record.Index.Fact(entry.Of) is not Owed owed)
            return new Problem("unknown-debt", "of", entry.Of.ToString(), "Nothing with that identifier is owed on this engine.", "Take the identifier from the list of what is owed.");
        if (record.Index.SettlementOf(owed.Id) is { } settled && settled.Id != entry.Id)
            return new Problem("settled-already", "of", owed.Headline, $"It was settled already by {settled.By}.", "Nothing need be done.");
        var (id, at) = Signed(entry);
        return Write(entry, record, new Settled(id, at, entry.By, owed.Id) { How = Blank(entry.How) });
    });

    /// <summary>Counts loose things out, or in again.</summary>
    public Outcome<Counted> Count(CountEntry entry) => Engine(entry.Engine).Then(record =>
    {
        var asked = new Asked(record);
        var what = asked.Words(entry.What, "what", "What is counted: gallery plugs, jets, shims, rags.");
        var number = asked.Take(Read(entry.Number, new ReadingContext { Kind = QuantityKind.Number }, "number"));
        if (number is not null && (number.Si is < 1 or > 100_000 || number.Si != Math.Floor(number.Si)))
            asked.Refuse(new("count-number", "number", $"\"{entry.Number}\"", "A whole number, 1 or more.", "Count them again."));
        var space = Blank(entry.Space) is { } named ? asked.Take(Space(record, named, "space")) : null;
        if (asked.Problems.Count > 0)
            return asked.Refused<Counted>();
        var (id, at) = Signed(entry);
        return Write(entry, record, new Counted(id, at, entry.By, what, (int)number!.Si, entry.Way) { Space = space?.Name, Note = Blank(entry.Note) });
    });

    /// <summary>Ends a signature or a joint's state, by no mistake: it was undone again.</summary>
    public Outcome<Undone> Undo(UndoEntry entry) => Engine(entry.Engine).Then(record =>
    {
        if (entry.Id is { } known && record.Index.Fact(known) is Undone before)
            return before;
        var found = entry.Of is { } of ? record.Index.Fact(of)
            : Blank(entry.Step) is { } step ? record.Signatures.LastOrDefault(s => s.Step.Text == step && !s.SecondLook && Standing.Of(s, record).Stands)
            : Blank(entry.Joint) is { } joint ? record.JointStates.LastOrDefault(s => s.Joint.Text == joint && Standing.Of(s, record).Stands)
            : (Fact?)null;
        if (found is not (Signature or JointState))
            return new Problem("nothing-to-undo", "of", entry.Of?.ToString() ?? Blank(entry.Step) ?? Blank(entry.Joint) ?? "nothing", "A step that is signed, or a joint that is made, and still stands.", "Look at what is signed, and name that.");
        if (!Standing.Of(found, record).Stands)
            return new Problem("nothing-to-undo", "of", found.Headline, $"It no longer stands: {Standing.Of(found, record).Why}.", "Nothing need be done.");
        var (id, at) = Signed(entry);
        return Write(entry, record, new Undone(id, at, entry.By, found.Id) { Why = Blank(entry.Why) });
    });

    private static List<Problem> FirstLook(Step step, Signature signature, CloseUp closing)
    {
        // The photograph that a signed step still wants is signed for by itself.
        if (signature.Photographed && closing.SignatureOf(step.Name) is not null && closing.WantOf(step.Name)?.Kind == WantKind.Photograph)
            return [];
        if (closing.SignatureOf(step.Name) is { } signed)
            return [new("signed-already", "step", step.Name.Text, $"{signed.By} signed it on {signed.At.Date:uuuu-MM-dd}, and it stands.", step.SecondLook ? "Sign the second look, or undo the first." : "Nothing need be done; undo it if it is to be done again.")];
        var refused = closing.WantsToSign(step.Name).Select(w => new Problem("step-wants", "step", $"{w.Kind.Word()}: {w.Why}", $"{step.Name} is signed once this is seen to.", Advice(w))).ToList();
        if (step.Photograph is { } photograph && step.Closes.Count > 0 && !signature.Photographed && closing.CoverOf(new(WantKind.Photograph, WorkItem.Of(step.Name), photograph)) is null)
            refused.Add(new("step-wants", "step", $"photograph: none of {photograph}", "What is closed over is photographed before.", "Take it and say so, or write the step down as owed."));
        return refused;
    }

    private static List<Problem> SecondLook(Step step, Signature signature, CloseUp closing) => closing.SignatureOf(step.Name) is not { } first
        ? [new("second-look-first", "step", step.Name.Text, "A second look follows a first signature that stands.", "Sign the step first.")]
        : CloseUp.IsAnother(signature, first)
            ? []
            : [new("second-look-same", "by", signature.By, $"{first.By} signed it on the same day. The second look is another person's, or the same person's on another day.", "Let somebody else look, or look again tomorrow.")];

    private static string Advice(Want want) => want.Kind switch
    {
        WantKind.Tool => "Fetch it.",
        WantKind.Cure => "Wait until then.",
        WantKind.Owed => "Do it and settle it first.",
        _ => $"Do it; or write a departure or a debt for \"{want.Item}\".",
    };

    /// <summary>The pieces chosen for the parts of a step that do not yet lie in them.</summary>
    private static IEnumerable<Chosen> ToPlace(Step step, EngineRecord record) =>
        step.Places.Select(record.Index.ChosenFor).OfType<Chosen>().Where(c => record.Index.PlacedIn(c.Part)?.Piece != c.Piece);

    /// <summary>The pieces that a judgement by hand and eye is about.</summary>
    private static IEnumerable<FactId> Around(HoldPoint hold, Step step, EngineRecord record)
    {
        IEnumerable<PartName> parts = hold.Part is { } part ? [part] : step.Places.Concat(step.Needs);
        return parts.Select(p => record.Index.PlacedIn(p)?.Id ?? record.Index.ChosenFor(p)?.Id).OfType<FactId>();
    }

    private static WorkItem? Item(Asked asked, EngineRecord record, string? text)
    {
        if (asked.Name<WorkItem>(text, WorkItem.TryRead, "item") is not { } item)
            return null;
        var unknown = Unknown(record, item);
        if (unknown is null)
            return item;
        asked.Refuse(unknown);
        return null;
    }

    /// <summary>What is wrong with the name of a thing; null where there is such a thing.</summary>
    private static Problem? Unknown(EngineRecord record, WorkItem item) => item.Kind switch
    {
        ItemKind.Joint => Missing(Joint(record, item.Name, "item")),
        ItemKind.Step => Missing(Step(record, item.Name, "item")),
        ItemKind.Hold when item.Name.Split(": ", 2) is [var step, var what] => Missing(Step(record, step, "item")) ?? Hold(record, step, what),
        ItemKind.Part when record.Parts.All(p => p.Name.Path != item.Name) => new("unknown-part", "item", $"\"{item.Name}\"", "This engine has no part of that name.", Nearest.Advice(item.Name, record.Parts.Select(p => p.Name.Path), "Name one that is there.")),
        _ => null,
    };

    private static Problem? Hold(EngineRecord record, string step, string what)
    {
        var points = record.Steps.First(s => s.Name.Text == step).Holds.Select(h => h.What).ToList();
        return points.Contains(what, StringComparer.OrdinalIgnoreCase)
            ? null
            : new("unknown-hold", "item", $"\"{what}\"", $"{step} has the hold points: {string.Join("; ", points)}.", Nearest.Advice(what, points, "Name one of them."));
    }

    private static Problem? Missing<T>(Outcome<T> outcome) => outcome.IsOk(out _, out var problems) ? null : problems[0];

    private static Outcome<Step> Step(EngineRecord record, string name, string field) =>
        Named(record.Steps, s => s.Name.Text, name, field, "step", "The plan has no step of that name.");

    private static Outcome<Joint> Joint(EngineRecord record, string name, string field) =>
        Named(record.Joints, j => j.Name.Text, name, field, "joint", "The engine has no joint of that name.");

    private static Outcome<Space> Space(EngineRecord record, string name, string field) =>
        Named([.. Plan.Of(record).Spaces.All], s => s.Name.Text, name, field, "space", "The engine has no space of that name.");

    private static Outcome<T> Named<T>(IReadOnlyList<T> all, Func<T, string> nameOf, string name, string field, string what, string none)
        where T : class
    {
        var typed = name.Trim();
        return all.FirstOrDefault(a => string.Equals(nameOf(a), typed, StringComparison.Ordinal)) is { } found
            ? found
            : new Problem($"unknown-{what}", field, $"\"{typed}\"", none, Nearest.Advice(typed, all.Select(nameOf), $"Name a {what} that is there."));
    }
}
