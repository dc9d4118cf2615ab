using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Gears;

/// <summary>The sum <c>port-side</c>.</summary>
internal static class PortSideSum
{
    private static readonly string[] HandWords = ["clockwise", "anticlockwise"];
    private static readonly string[] DriveWords = ["outside", "inside", "chain"];
    private static readonly string[] LiesWords = ["left", "above", "right", "below"];
    private static readonly string[] PortWords = ["on the left", "at the top", "on the right", "at the bottom"];

    public static Sum Description { get; } = new(Answer)
    {
        Name = "port-side",
        Question = "Which way does a gear pump turn at the end of its train, how fast, and which port delivers?",
        Source = "Kinematics of gear trains; teeth come out of mesh on the inlet side (common practice)",
        Inputs =
        [
            new("hand", "", "which way the first wheel turns, looked at from one end throughout", Measure.Word) { Words = HandWords },
            new("driver-teeth", "z_a", "teeth of the driving wheel of each step; none where the pump sits on the first shaft", Measure.Number) { IsWhole = true, List = "step", Allowed = Allowed.Between(1, 1_000), IsOptional = true },
            new("driven-teeth", "z_b", "teeth of the driven wheel of each step", Measure.Number) { IsWhole = true, List = "step", Allowed = Allowed.Between(1, 1_000) },
            new("kind", "", "teeth outside both wheels, inside a ring, or a chain or belt", Measure.Word) { List = "step", Words = DriveWords },
            new("lies", "", "where the pump's driver lies beside the driven gear, looked at from the same end", Measure.Word) { Words = LiesWords },
            new("speed", "ω_0", "speed of the first wheel", Measure.RotationalSpeed) { Allowed = Allowed.Between(0, 5_000) },
        ],
        Outputs =
        [
            new("ratio", "i", "turns of the pump for one of the first wheel", Measure.Number),
            new("hand", "h", "hand of the pump's driver, 1 with the clock, −1 against it", Measure.Number),
            new("pump-speed", "ω", "speed of the pump", Measure.RotationalSpeed),
            new("outlet", "φ", "direction of the outlet from the line of centres, with the clock from the left", Measure.Angle),
        ],
        Examples = ["hand=clockwise driver-teeth=36 driven-teeth=24 driver-teeth=24 driven-teeth=18 lies=left speed=1000rev/min"],
        Together = inputs => inputs.IsGiven("driver-teeth") && !inputs.IsGiven("driven-teeth")
            ? [new("driven-teeth", "driving wheels without driven ones", "one for each step", "Give driven-teeth for each step, in the same order.")]
            : [],
    };

    private static string Answer(SumInputs inputs, Written trace)
    {
        var hand = (Hand)Array.IndexOf(HandWords, inputs.Word("hand"));
        var lies = (Beside)Array.IndexOf(LiesWords, inputs.Word("lies"));
        var drives = new Drive[inputs.CountOf("driver-teeth")];
        if (drives.Length > 0)
        {
            var (drivers, drivens, kinds) = (inputs.Each("driver-teeth"), inputs.Each("driven-teeth"), inputs.EachWord("kind"));
            for (var i = 0; i < drives.Length; i++)
                drives[i] = new Drive((int)drivers[i], (int)drivens[i], (DriveKind)Array.IndexOf(DriveWords, kinds[i]));
        }

        var driven = GearTrain.Through(hand, drives, trace);
        trace.Given("ω_0", "speed of the first wheel", inputs["speed"], Units.RadianPerSecond);
        trace.Line("ω", "speed of the pump", "i × ω_0", driven.Ratio * inputs["speed"], Units.RadianPerSecond);
        trace.Given("λ", "where the driver lies, in quarter turns with the clock from the left", (int)lies, Units.None);
        var outlet = GearTrain.Outlet(driven.Hand, lies);
        var angle = ((int)lies + (driven.Hand == Hand.Clockwise ? 1 : -1)) * Math.PI / 2;
        trace.Line("φ", "direction of the outlet from the line of centres, with the clock from the left", "(λ + h) × π/2", angle, Units.Radian, "teeth come out of mesh on the inlet side");
        return $"The pump's driver turns {HandWords[(int)driven.Hand]}. It carries the oil round the outside; the teeth come out of mesh {PortWords[(int)GearTrain.Across(outlet)]}, which is the inlet, and the port {PortWords[(int)outlet]} delivers.";
    }
}
