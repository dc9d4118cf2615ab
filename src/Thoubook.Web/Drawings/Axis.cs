using System.Globalization;
using Thoubook.Appraisal;
using Thoubook.Record.Measures;

namespace Thoubook.Web.Drawings;

/// <summary>
/// The ruled edge of a limits scale: wear runs to the right whichever way the figure goes. Places on it are per cent of its width.
/// </summary>
internal sealed class Axis
{
    private readonly double _sign;
    private readonly double _left;
    private readonly double _width;

    private Axis(double sign, double left, double width) => (_sign, _left, _width) = (sign, left, width);

    /// <summary>[SI] The new limit on the side that wear does not lead to, the other new limit, and the worn ones; null where none.</summary>
    public double? Gate { get; private init; }

    public double? GateEnd { get; private init; }

    /// <summary>Where metal begins on the right.</summary>
    public double? Wall { get; private init; }

    /// <summary>Where metal begins on the left.</summary>
    public double? NearWall { get; private init; }

    public bool HasWornWall => Wall is not null && Wall != GateEnd;

    public static Axis Of(BindingLimits limits, IEnumerable<(double Value, double Band)> shown)
    {
        var shrinks = limits.Wear == WearDirection.Shrinks;
        var (gate, gateEnd) = shrinks ? (limits.NewGreatest, limits.NewLeast) : (limits.NewLeast, limits.NewGreatest);
        var (near, wall) = shrinks ? (limits.WornGreatest, limits.WornLeast) : (limits.WornLeast, limits.WornGreatest);
        var sign = shrinks ? -1.0 : 1.0;

        double[] marks = [.. new[] { gate, gateEnd, near ?? gate, wall ?? gateEnd }.OfType<double>().Select(v => v * sign)];
        double[] ends = [.. shown.SelectMany(s => new[] { (s.Value * sign) - s.Band, (s.Value * sign) + s.Band })];
        var (low, high) = marks.Length > 0 ? (marks.Min(), marks.Max()) : ends.Length > 0 ? (ends.Min(), ends.Max()) : (0, 1);
        var span = high - low > 0 ? high - low : ends.Length > 0 && ends.Max() > ends.Min() ? ends.Max() - ends.Min() : Math.Max(Math.Abs(high) * 1e-3, 1e-6);

        // What lies very far off is drawn cut short at the edge, so that the limits stay readable.
        foreach (var end in ends)
        {
            low = Math.Min(low, Math.Max(end, low - (1.6 * span)));
            high = Math.Max(high, Math.Min(end, high + (1.6 * span)));
        }

        var width = Math.Max(high - low, span * 1e-3);
        return new(sign, low - (0.24 * width), width * 1.46) { Gate = gate, GateEnd = gateEnd, Wall = wall ?? gateEnd, NearWall = near ?? gate };
    }

    /// <summary>[%] of the width, kept on the sheet.</summary>
    public double At(double si) => Math.Clamp(Raw(si), 1.5, 98.5);

    public bool IsCutShort(double si) => Raw(si) is < 1 or > 99;

    /// <summary>[%] of a distance.</summary>
    public double Distance(double si) => Math.Abs(si) / _width * 100;

    /// <summary>Towards the worn end: +1 or −1 in the figure's own terms.</summary>
    public double Sign => _sign;

    private double Raw(double si) => ((si * _sign) - _left) / _width * 100;

    public static string Percent(double place) => place.ToString("0.00", CultureInfo.InvariantCulture) + "%";
}
