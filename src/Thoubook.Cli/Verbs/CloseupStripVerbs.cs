using Thoubook.Cli.Answers;
using Thoubook.Cli.Speaking;
using Thoubook.Record;
using Thoubook.Record.Closing;
using Thoubook.Workshop;

namespace Thoubook.Cli.Verbs;

/// <summary>Taking apart: what comes off, what it destroys, and what was found against what was left.</summary>
internal static class CloseupStripVerbs
{
    private static readonly Option Whole = new("whole", null, "as it came, with everything in place; so taken anyway where nothing is signed yet");
    private static readonly Option All = new("all", null, "what was taken down or passed over as well");
    private static readonly Option InWords = new("words", "TEXT", "what was seen, in words; with --skip why it was passed over");
    private static readonly Option Tag = new("tag", "TAG", "the tag tied on, one that survives washing; a new one becomes a piece of the part");
    private static readonly Option Skip = new("skip", null, "passes it over: it is not asked again");

    public static readonly Verb Strip = new("closeup strip", "The plan backwards: what comes off, and what each removal destroys and is asked before; or the shortest strip to have one part out.", RunStrip)
    {
        Operands = [CloseupVerbs.Engine, new("PART", "the part that is to come out; left out: everything in its order") { Optional = true }],
        Options = [Whole, All, Option.Json],
        More = "What is destroyed is found from the record: floats, backlash and projections, shims, locking, release feel, which way round; and from the asks: of parts and joints in the engine file. Nothing of it need be answered.",
        Examples =
        [
            new("thoubook closeup strip \"Sandpiper six\"", "what comes off next, and what to take down before."),
            new("thoubook closeup strip \"Sandpiper six\" lower-half/oil-pumps/pressure-pump/driver --whole", "the shortest way to one part of an engine as it came, with its hours and what must be new."),
        ],
    };

    public static readonly Verb AsFound = new("closeup as-found", "Takes down what was found before a thing is disturbed; alone, what was found against what was left.", RunAsFound)
    {
        Operands =
        [
            CloseupVerbs.Engine,
            new("OF", "the part or the joint, such as \"joint tank/strainer\"; left out: the report") { Optional = true },
            new("WHAT", "what was asked: a dimension or fit by name, or in words") { Optional = true },
            new("VALUE", "as read, with its unit") { Optional = true, Rest = true },
        ],
        Options = [InWords, Tag, Skip, Option.By, Option.At, Option.Id, Option.Confirm, Option.Json],
        More = "A figure is read as its readings are: a bare number is in the unit of its limits.",
        Examples =
        [
            new("thoubook closeup as-found \"Sandpiper six\" lower-half/oil-pumps/pressure-pump/driver lower-half/oil-pumps/pressure-pump.driver-end-float 4.5thou --by bench", "before the cover came off."),
            new("thoubook closeup as-found \"Sandpiper six\" \"joint tank/strainer\" \"release feel\" --words \"all alike, none loose\" --by bench", "in words."),
            new("thoubook closeup as-found \"Sandpiper six\" crankcase \"stud projection\" --skip --words \"studs were out\" --by bench", "passed over."),
            new("thoubook closeup as-found \"Sandpiper six\"", "as found against as left, with the difference."),
        ],
    };

    private static ExitStatus RunStrip(Request request, Terminal terminal) => Workshops.With(request, terminal, workshop =>
    {
        bool? whole = request.Has(Whole) ? true : null;
        if (!workshop.Strip(request.Operands[0], whole).IsOk(out var strip, out var problems))
            return terminal.Refuse(request, problems);
        ComesOff? off = null;
        if (request.Operands.Count > 1 && !workshop.WhatComesOff(request.Operands[0], request.Operands[1], whole).IsOk(out off, out problems))
            return terminal.Refuse(request, problems);
        if (request.Has(Option.Json))
            terminal.Json(StripAnswer.Of(strip, off), AnswerJson.Shapes.StripAnswer);
        else
            Tell(terminal, strip, off, request.Has(All));
        return ExitStatus.Good;
    });

    private static void Tell(Terminal terminal, Strip strip, ComesOff? off, bool all)
    {
        if (off is not null)
        {
            terminal.Out.WriteLine(off.Way.Steps.Count == 0
                ? $"To have {off.Part} out: nothing signed need be undone."
                : $"To have {off.Part} out, undo {off.Way.Steps.Count} {(off.Way.Steps.Count == 1 ? "step" : "steps")}, {CloseupVerbs.Minutes(off.Way.Minutes)}: {string.Join(", ", off.Way.Steps)}.");
            if (off.Way.Consumables.Count > 0)
                terminal.Out.WriteLine($"Must be new: {string.Join(", ", off.Way.Consumables)}.");
            terminal.Out.WriteLine();
        }
        else
        {
            terminal.Out.WriteLine(strip.IsWhole ? "As it came, with everything in place:" : "As far as it is signed:");
        }

        var removals = off?.Removals ?? strip.Removals;
        if (removals.Count == 0)
            terminal.Out.WriteLine("Nothing is together.");
        foreach (var removal in removals)
        {
            var asks = removal.Asks.Where(a => all || strip.AnswerTo(a, removal) is null).ToList();
            terminal.Out.WriteLine($"{removal.Said}{(asks.Count == 0 ? ": nothing is asked" : "")}");
            foreach (var ask in asks)
                terminal.Out.WriteLine($"  {ask.Of}: {ask.What}{(strip.AnswerTo(ask, removal) is { } found ? $" = {StripAnswer.Said(found)}" : "")}");
        }
    }

    private static ExitStatus RunAsFound(Request request, Terminal terminal)
    {
        if (request.Operands.Count == 1)
            return Workshops.With(request, terminal, workshop => Report(request, terminal, workshop));
        if (request.Operands.Count == 2)
            return terminal.Refuse(request, [new("too-few", "", "no WHAT", "WHAT is what was asked: a dimension or fit by name, or in words.", $"Write {Help.Usage(AsFound)}.")]);
        return Facts.Write(request, terminal, workshop => Facts.Signature(request).Then(signed => workshop.TakeAsFound(new AsFoundEntry(request.Operands[0], request.Operands[2], signed.By)
        {
            At = signed.At,
            Id = signed.Id,
            Of = request.Operands[1],
            Value = request.Operands.Count > 3 ? string.Join(' ', request.Operands.Skip(3)) : null,
            Words = request[InWords],
            Tag = request[Tag],
            Skipped = request.Has(Skip),
            Confirmed = request.Confirmed,
        }).Then<Fact>(f => f)));
    }

    private static ExitStatus Report(Request request, Terminal terminal, OpenWorkshop workshop)
    {
        if (!workshop.FoundAndLeft(request.Operands[0]).IsOk(out var report, out var problems))
            return terminal.Refuse(request, problems);
        if (request.Has(Option.Json))
        {
            terminal.Json(new FoundAndLeftAnswer([.. report.Select(FoundAnswer.Of)]), AnswerJson.Shapes.FoundAndLeftAnswer);
            return ExitStatus.Good;
        }

        if (report.Count == 0)
        {
            terminal.Out.WriteLine("Nothing was taken down as found.");
            return ExitStatus.Good;
        }

        var table = new Table("of", "what", "as found", "as left", "difference");
        foreach (var one in report)
            table.Add(one.Found.Part?.Path ?? one.Found.Joint!.Value.Text, one.Found.What, StripAnswer.Said(one.Found), one.Left?.What ?? "not known", one.DifferenceSaid ?? "");
        table.WriteTo(terminal);
        return ExitStatus.Good;
    }
}
