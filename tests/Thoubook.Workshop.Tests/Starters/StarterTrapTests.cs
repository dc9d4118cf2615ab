using Thoubook.Record;
using Thoubook.Record.Closing;

namespace Thoubook.Workshop.Tests.Starters;

/// <summary>What engines were lost by stands in the plans: each trap is a hold point that keeps a step from being signed.</summary>
public sealed class StarterTrapTests
{
    [Theory]
    [InlineData("gear-pump", "gears-packed", "pump not primed")]
    [InlineData("gear-pump", "which port draws", "ports or rotation reversed")]
    [InlineData("gear-pump", "driver-end-float", "end float not measured with its gasket")]
    [InlineData("gear-pump", "as thick as the one that the end float", "gasket changed between trial and final", "seal=gasket")]
    [InlineData("gear-pump", "seal present and pipe seated", "seal of the pick-up pipe left out")]
    [InlineData("gear-pump", "no split found", "pick-up pipe split")]
    [InlineData("gear-pump", "joint faces of the suction side", "suction side leaks air")]
    [InlineData("gear-pump", "falls by its own weight with the cover tight", "warped cover jams the relief valve", "relief=yes")]
    [InlineData("gear-pump", "drive-engagement", "quill engagement not checked", "drive=splines")]
    [InlineData("relief-valve", "moves by its own weight", "valve dry, reversed or full of grit")]
    [InlineData("relief-valve", "right way round", "plunger reversed")]
    [InlineData("relief-valve", "no sliver, no jointing", "sliver under the seat")]
    [InlineData("relief-valve", "hiding is known", "spring shimmed to hide another fault")]
    [InlineData("main-bearings", "plugs counted", "gallery plug missing after machining")]
    [InlineData("main-bearings", "sighted after the last machining", "swarf in a gallery")]
    [InlineData("main-bearings", "sludge traps opened", "sludge traps left closed")]
    [InlineData("main-bearings", "holes to the crankpins", "inner tube reversed", "traps=plugs with inner tubes")]
    [InlineData("main-bearings", "tight and staked", "end plug lightly held")]
    [InlineData("main-bearings", "blind bottoms probed", "fragment in a blind drilling")]
    [InlineData("main-bearings", "half with the hole in the case", "shells exchanged top for bottom")]
    [InlineData("main-bearings", "tangs in their recesses", "tangs not located")]
    [InlineData("main-bearings", "enters freely to its full depth", "locating bolt into a turned bearing", "located=locating bolts")]
    [InlineData("main-bearings", "thickness written down and equal", "shims unequal", "bearings=poured with shims")]
    [InlineData("main-bearings", "grooved faces towards the crank webs", "thrust faces reversed")]
    [InlineData("main-bearings", "reground thrust", "oversize thrust ignored")]
    [InlineData("main-bearings", "crankshaft.end-float", "end float not measured")]
    [InlineData("main-bearings", "main-1.nip", "nip not felt")]
    [InlineData("main-bearings", "main-1.housing-bore", "cap distorted")]
    [InlineData("main-bearings", "no ridge on a journal", "ridge in line with the oil hole")]
    [InlineData("main-bearings", "blind holes dried", "oil in blind holes")]
    [InlineData("main-bearings", "direction of rotation marked", "turned backwards")]
    [InlineData("main-bearings", "tagged loose in the strip", "loose studs not re-checked")]
    [InlineData("main-bearings", "modification plates", "number plates exchanged")]
    [InlineData("pistons", "seen in their grooves all round", "circlips not in their grooves")]
    [InlineData("pistons", "pads counted at both ends", "pin pad missing", "pin=pads")]
    [InlineData("pistons", "one ring in each groove, tops up", "ring forgotten, doubled, upside down")]
    [InlineData("pistons", "offset or split side", "piston the wrong way")]
    [InlineData("pistons", "rod by its number, offset and oil hole", "rod reversed")]
    [InlineData("pistons", "numbers together on the same side", "cap on the wrong rod")]
    [InlineData("pistons", "oiled at the last moment", "bores and rings entered dry")]
    [InlineData("pistons", "every ring clamp proved", "ring not compressed under the block", "through=cylinder down over it")]
    [InlineData("pistons", "liner-1-protrusion", "liner not to its seating", "liners=wet")]
    [InlineData("pistons", "clamps or spacers over every liner", "liners lifted when turned", "liners=wet")]
    [InlineData("pistons", "no water past the seals", "water seal not tested", "liners=wet")]
    [InlineData("pistons", "balance weight near a liner", "balance weight touching")]
    [InlineData("pistons", "nothing foreign under the block", "bracket under a hold-down nut")]
    [InlineData("pistons", "wrong size for its hole", "stud of standard size in a worn hole")]
    [InlineData("sump", "plugs counted in, each sealed and locked", "gallery plug missing")]
    [InlineData("sump", "in line with its outlet", "plug turned so that its drilling faces nothing")]
    [InlineData("sump", "a wire through each", "jets blocked", "jets=2")]
    [InlineData("sump", "gauzes whole", "strainer loose")]
    [InlineData("sump", "nothing inside the edge", "sealant squeezed inwards")]
    [InlineData("sump", "tools, rags, plugs and bags", "rags left inside")]
    [InlineData("sump", "breather and drain-back holes open", "breather covered by a gasket")]
    [InlineData("sump", "oil at every bearing and jet", "one bearing dry")]
    [InlineData("sump", "no leak at flange", "locked before leaks were tested")]
    [InlineData("sump", "none bottoming", "screw too long for its hole")]
    [InlineData("sump", "real spanner", "drain plug not reachable")]
    [InlineData("sump", "steel parts oiled", "steel left with thin oil")]
    [InlineData("cylinder-head", "piston-height-1", "piston height not measured")]
    [InlineData("cylinder-head", "exhaust-valve.clearance", "guide clearance measured on one only")]
    [InlineData("cylinder-head", "inlet-spring-height", "spring at the wrong height")]
    [InlineData("cylinder-head", "close coils", "close coils up")]
    [InlineData("cylinder-head", "pair of cotters seen seated", "cotters not home")]
    [InlineData("cylinder-head", "ball in the socket", "push rod of the wrong length")]
    [InlineData("cylinder-head", "tappet-clearance", "tappets set to the wrong figure")]
    [InlineData("cylinder-head", "order of the nuts known", "nuts in the wrong order or to a dry figure")]
    [InlineData("cylinder-head", "assembly lubricant", "lobes with plain oil")]
    [InlineData("cylinder-head", "tube seals at both ends", "push-rod tube seals left out", "tubes=yes")]
    [InlineData("timing-drive", "home against its shoulder, its end measured", "bush short of its shoulder")]
    [InlineData("timing-drive", "marked before pressing", "bush with its oil hole blind")]
    [InlineData("timing-drive", "followers in and retained", "follower dropped")]
    [InlineData("timing-drive", "key seated to its depth", "key missing or with a step")]
    [InlineData("timing-drive", "no burr or chip under it", "gear not home")]
    [InlineData("timing-drive", "timing-error", "matched only at the first tooth")]
    [InlineData("timing-drive", "relation proved by the disc", "hunting tooth", "hunting=yes")]
    [InlineData("timing-drive", "new marks punched", "unmarked tooth after a re-made gear")]
    [InlineData("timing-drive", "guide and tensioner the right way round", "chain guide the wrong way", "drive=chain")]
    [InlineData("timing-drive", "no bracket screw among them", "bracket bolt under a cover")]
    [InlineData("timing-drive", "lip inwards", "seal dry or turned over")]
    [InlineData("timing-drive", "hand of every nut", "handed threads mixed")]
    [InlineData("timing-drive", "with no shims first", "float without shims at first", "float-by=shims")]
    [InlineData("timing-drive", "shims as in the trial", "bevel shims where the trial had others", "drive=shaft with bevels")]
    [InlineData("timing-drive", "list of nuts behind it", "nut reached only before the next part is on")]
    public void ATrap_StandsInThePlan(string starter, string words, string trap, string answer = "")
    {
        var record = StarterBench.Laid(StarterBench.Bare, starter, answer.Length == 0 ? [] : [(answer.Split('=')[0], answer.Split('=')[1])]);
        var kept = record.Steps.Where(s => s.Holds.Any(h => h.What.Contains(words, StringComparison.Ordinal)) || s.Name.Text.Contains(words, StringComparison.Ordinal)).ToList();
        Assert.True(kept.Count > 0, $"{starter}: nothing keeps from \"{trap}\"");

        // With all else done, the step is not signed.
        var closeUp = CloseUp.Of(Plan.Of(record with { JointStates = [.. record.Joints.Select(j => new JointState(FactId.New(), default, "bench", j.Name, j.Last))] }), new(default));
        Assert.All(kept, s => Assert.False(closeUp.IsDone(s.Name)));
        Assert.All(kept.Where(s => s.Holds.Count > 0), s => Assert.Contains(closeUp.WantsToSign(s.Name), w => w.Item.Kind == ItemKind.Hold));
    }

    /// <summary>Tightening and locking are two passes, looked at twice.</summary>
    [Theory]
    [InlineData("gear-pump", "pressure-pump/cover-screws", "pressure-pump/cover-on", "pressure-pump/cover-locked")]
    [InlineData("main-bearings", "crankcase/main-2/cap-studs", "mains/cap-2-on", "mains/locked")]
    [InlineData("pistons", "rods/rod-3/cap-bolts", "pistons/cap-3-on", "pistons/locked")]
    [InlineData("sump", "sump/flange", "sump/on", "sump/locked")]
    public void TighteningAndLocking_AreTwoPasses(string starter, string joint, string first, string then)
    {
        var plan = Plan.Of(StarterBench.Laid(StarterBench.Bare, starter));
        Assert.Contains(plan.Before(new StepName(then)), e => e.First.Name.Text == first && e.About.Contains(joint, StringComparison.Ordinal));
        Assert.Equal(JointStage.Locked, plan.Record.Joints.Single(j => j.Name.Text == joint).Last);
    }
}
