using Thoubook.Mechanics.Gears;

namespace Thoubook.Mechanics.Tests.Pumps;

/// <summary>The gears of the reference tables.</summary>
internal static class InvolutePairs
{
    /// <summary>A pair of the eight computed by areas as a function of rotation.</summary>
    public static GearPair Of(ReferenceTable.Row row) => Drawn(
        row.Number("module_mm"),
        row.Number("cutter_pressure_angle_deg"),
        ((int)row.Number("teeth_1"), row.Number("profile_shift_1_dimless"), row.Number("tip_radius_1_mm")),
        ((int)row.Number("teeth_2"), row.Number("profile_shift_2_dimless"), row.Number("tip_radius_2_mm")),
        row.Number("centre_distance_mm"));

    /// <summary>A pair of the worked examples.</summary>
    public static GearPair Of(WorkedExample example) => Drawn(
        example.Input("module"),
        example.Input("pressure_angle"),
        ((int)example.Input("z1"), example.Input("x1"), example.Input("tip_radius_1")),
        ((int)example.Input("z2"), example.Input("x2"), example.Input("tip_radius_2")),
        example.Input("centre_distance"));

    /// <summary>From millimetres and degrees.</summary>
    public static GearPair Drawn(double module, double angle, (int Teeth, double Shift, double Tip) first, (int Teeth, double Shift, double Tip) second, double centres) => new(
        SpurGear.Drawn(module * 1e-3, first.Teeth, angle * Math.PI / 180, first.Shift, first.Tip * 1e-3),
        SpurGear.Drawn(module * 1e-3, second.Teeth, angle * Math.PI / 180, second.Shift, second.Tip * 1e-3),
        centres * 1e-3);
}
