using Thoubook.Files;
using Thoubook.Files.EngineFiles;
using Thoubook.Record;
using Thoubook.Record.Closing;
using Thoubook.Workshop.Starters;
using Thoubook.Workshop.Tests.Demo;

namespace Thoubook.Workshop.Tests.Starters;

/// <summary>Starters use the parts and figures that the engine has, ask where two may be meant, and follow what is answered.</summary>
public sealed class StarterPartsTests
{
    [Fact]
    public void PartsUnderOtherNames_AreTaken_AndTheirFiguresWithThem()
    {
        var engine = StarterBench.Read("""
            parts: { lower-half/oil-pump/housing: {}, lower-half/oil-pump/driver: {}, lower-half/oil-pump/gasket: {}, lower-half/oil-pump/spindle: {} }
            dimensions: { lower-half/oil-pump/driver.outside: { new: [1.9990 in, 2.0000 in] }, lower-half/oil-pump/housing.driver-pocket: { new: [2.0030 in, 2.0040 in] } }
            fits: { lower-half/oil-pump.tips: { gap: housing.driver-pocket - driver.outside, new: [3 thou, 5 thou] } }
            """);
        var started = StarterBench.Ok(StarterBench.Ok(Starter.Find("gear-pump")).On(engine, new Dictionary<string, string> { ["seal"] = "gasket" }));
        var whole = StarterBench.Laid(engine, started);

        Assert.Equal(
            [
                "lower-half/oil-pump.driver-tip-clearance = lower-half/oil-pump.tips",
                "lower-half/oil-pump/body = lower-half/oil-pump/housing",
                "lower-half/oil-pump/driven-spindle = lower-half/oil-pump/spindle",
                "lower-half/oil-pump/driver.tip-diameter = lower-half/oil-pump/driver.outside",
                "lower-half/oil-pump/joint = lower-half/oil-pump/gasket",
            ],
            started.Taken.Select(t => $"{t.Drawn} = {t.There}").Order(StringComparer.Ordinal));
        Assert.Contains(whole.Steps.Single(s => s.Name.Text == "lower-half/oil-pump/cover-on").Holds, h => h is { Kind: HoldKind.Fit, What: "lower-half/oil-pump.tips" });
        Assert.Equal([PartName.Of("lower-half/oil-pump/housing"), PartName.Of("lower-half/oil-pump/cover")], whole.Joints.Single(j => j.Name.Text == "lower-half/oil-pump/cover-screws").Parts);
        Assert.DoesNotContain(whole.Parts, p => p.Name.Leaf is "body" or "joint" or "driven-spindle");
        Assert.Empty(Plan.Of(whole).Faults);
    }

    [Fact]
    public void WhereTwoMayBeMeant_ItIsAsked_AndAnswered()
    {
        var engine = StarterBench.Read("parts: { front/oil-pump: {}, rear/oil-pump: {}, rear/oil-pump/film: {}, rear/oil-pump/gasket: {} }");
        var pump = StarterBench.Ok(Starter.Find("gear-pump"));

        Assert.False(pump.On(engine, StarterBench.None).IsOk(out _, out var asked));
        Assert.Equal(["at=front/oil-pump", "at=rear/oil-pump"], Assert.Single(asked).Meanings.Select(m => m.Code));

        Assert.False(pump.On(engine, new Dictionary<string, string> { ["at"] = "rear/oil-pump" }).IsOk(out _, out asked));
        Assert.Equal("rear/oil-pump/joint", Assert.Single(asked).Field);
        Assert.True(asked[0].IsQuestion);

        Assert.True(pump.On(engine, new Dictionary<string, string> { ["at"] = "rear/oil-pump", ["rear/oil-pump/joint"] = "rear/oil-pump/film" }).IsOk(out _, out _));
    }

    [Fact]
    public void TheBearingsOfALargeEngine_AreFoundByTheirNumbers()
    {
        var engine = StarterBench.Read($"parts: {{ bed: {{}}, crank: {{}}, {string.Join(", ", Enumerable.Range(1, 7).Select(n => $"bed/bearing-{n}/cap: {{}}"))} }}");
        var whole = StarterBench.Laid(engine, "main-bearings", ("mains", "7"), ("thrust-at", "4"));

        Assert.Contains(whole.Parts, p => p.Name.Path == "bed/bearing-4/rear-thrust-washer");
        Assert.Contains(whole.Dimensions, d => d.Name.ToString() == "crank.main-7");
        Assert.Equal(7, whole.Joints.Count(j => j.Name.Text.EndsWith("/cap-studs", StringComparison.Ordinal)));
        Assert.DoesNotContain(whole.Parts, p => p.Name.Path.StartsWith("crankcase", StringComparison.Ordinal));
    }

    /// <summary>An engine of real size whose parts are all named: hardly one is added, none twice, and all its fits stand in the hold points.</summary>
    [Fact]
    public void AnEngineThatHasItsParts_IsClosedUpWithThem()
    {
        var file = StarterBench.Ok(EngineFile.Read(File.ReadAllText(Path.Combine(DemoWorkshop.Files, "sandpiper-six", "engine.yaml")), "engine.yaml", new ImportTerms(default, "owner")));
        var engine = new EngineRecord(file.Engine) { Documents = file.Documents, Parts = file.Parts, Dimensions = file.Dimensions, Fits = file.Fits };

        var closed = StarterBench.Laid(engine, "main-bearings", ("mains", "7"), ("thrust-at", "4"));
        closed = StarterBench.Laid(closed, "pistons", ("cylinders", "6"));
        Assert.Equal(engine.Parts.Count, closed.Parts.Count);
        Assert.Equal(engine.Fits.Count, closed.Fits.Count);
        closed = StarterBench.Laid(closed, "cylinder-head", ("cylinders", "6"));
        closed = StarterBench.Laid(closed, "timing-drive", ("bushes", "4"), ("idlers", "1"), ("accessories", "2"));
        closed = StarterBench.Laid(closed, "gear-pump");
        closed = StarterBench.Laid(closed, "relief-valve", ("stages", "3"), ("seat", "in a sleeve"), ("stage", "lower-half/relief-valve/main-stage, lower-half/relief-valve/second-stage, lower-half/relief-valve/gear-stage"));
        closed = StarterBench.Laid(closed, "sump", ("strainers", "2"), ("gallery-plugs", "2"));

        Assert.InRange(closed.Parts.Count - engine.Parts.Count, 1, 12);
        Assert.True(closed.Steps.Count > 120, $"{closed.Steps.Count} steps");
        Assert.Empty(Plan.Of(closed).Faults);
        var held = closed.Steps.SelectMany(s => s.Holds).Select(h => h.Figure).OfType<FigureName>().Select(f => f.ToString()).ToHashSet();
        Assert.All(["crankcase/main-7.oil-clearance", "crankshaft.end-float", "rods/rod-6.oil-clearance", "pistons/piston-6.skirt-clearance", "cylinder-head/cylinder-6/exhaust-valve.clearance", "camshaft.bush-4-clearance", "lower-half/oil-pumps/pressure-pump.driver-end-float"], f => Assert.Contains(f, held));
    }

    [Theory]
    [InlineData("mains", "5", "thrust-at", "6", "At most 5")]
    [InlineData("mains", "3", "main", "bed/a, bed/b", "Here stand 3")]
    [InlineData("mains", "3", "main", "bed/a", "each with its own name")]
    [InlineData("mains", "3", "crankshaft", "crankcase", "answered to crankcase already")]
    public void AnswersThatCannotBothBe_AreRefusedInWords(string key, string text, string other, string otherText, string says)
    {
        Assert.False(StarterBench.Ok(Starter.Find("main-bearings")).On(StarterBench.Bare, new Dictionary<string, string> { [key] = text, [other] = otherText }).IsOk(out _, out var problems));
        Assert.Contains(problems, p => p.ToString().Contains(says, StringComparison.Ordinal));
    }

    /// <summary>An answer, and what it brings into the plan or leaves out of it.</summary>
    [Theory]
    [InlineData("gear-pump", "seal=gasket", "gasket as thick as the one that the end float was taken with", "film thin and even")]
    [InlineData("gear-pump", "seal=anaerobic sealant", "cure: 24 h", "gasket held up")]
    [InlineData("gear-pump", "locking=lock wire", "lock wire, new", "tab washers")]
    [InlineData("gear-pump", "drive=splines", "drive-engagement", "key seated")]
    [InlineData("gear-pump", "mounting=built in", "cover-on", "fixings")]
    [InlineData("relief-valve", "stages=3", "relief-valve/stage-3/cap-on", "relief-valve/stage-4")]
    [InlineData("relief-valve", "setting=screw with lock nut", "turns of the screw", "shims")]
    [InlineData("main-bearings", "bearings=poured with shims", "pack of each side under its own side", "nip-taken")]
    [InlineData("main-bearings", "bearings=bushes", "crankcase/main-2/bush", "cap-1-on")]
    [InlineData("main-bearings", "located=locating bolts", "enters freely to its full depth", "tangs in their recesses")]
    [InlineData("main-bearings", "traps=none", "blind bottoms probed", "sludge traps opened")]
    [InlineData("main-bearings", "lies=upright", "attitude: upright", "inverted")]
    [InlineData("pistons", "cylinders=2", "pistons/piston-2-in", "pistons/piston-3-in")]
    [InlineData("pistons", "liners=wet", "water-tested", "pistons/liners-none")]
    [InlineData("pistons", "pin=pads", "pads counted at both ends", "circlips")]
    [InlineData("pistons", "through=cylinder down over it", "every ring clamp proved", "pistons/piston-1-in")]
    [InlineData("sump", "gallery-plugs=5", "all 5 plugs counted in", "gallery-plug-6")]
    [InlineData("sump", "doors=2", "sump/door-2-on", "sump/door-3-on")]
    [InlineData("cylinder-head", "gear=overhead camshaft", "at the marked serration", "push rods straight")]
    [InlineData("cylinder-head", "cover=none", "head/turned", "head/cover-on")]
    [InlineData("timing-drive", "idlers=2", "timing-case/idler-2", "timing-case/idler-3")]
    [InlineData("timing-drive", "drive=chain", "tensioner free", "cam-backlash")]
    [InlineData("timing-drive", "hunting=yes", "number of turns after which the marks meet", "bevel-shims")]
    [InlineData("timing-drive", "seal=scroll", "hand of the scroll", "lip inwards")]
    public void WhatIsAnswered_ChangesWhatIsAdded(string starter, string answer, string brings, string leavesOut)
    {
        var text = EngineFile.Write(StarterBench.Laid(StarterBench.Bare, starter, (answer.Split('=')[0], answer.Split('=')[1])));

        Assert.Contains(brings, text, StringComparison.Ordinal);
        Assert.DoesNotContain(leavesOut, text, StringComparison.Ordinal);
    }
}
