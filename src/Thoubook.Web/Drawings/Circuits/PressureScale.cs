using System.Globalization;

namespace Thoubook.Web.Drawings.Circuits;

/// <summary>Height on the sheet for a gauge pressure: even, or by the square root where the low side would else lie on the floor.</summary>
internal sealed class PressureScale
{
    private static readonly double[] Steps = [1, 2, 2.5, 5, 10];

    private readonly double _floor;
    private readonly double _height;
    private readonly double _top;

    private PressureScale(double floor, double height, double top, bool root) => (_floor, _height, _top, IsRoot) = (floor, height, top, root);

    /// <summary>Drawn by the square root of the pressure.</summary>
    public bool IsRoot { get; }

    /// <param name="pressures">What is to be drawn, in the unit of the drawing.</param>
    /// <param name="floor">[px] where nought lies.</param>
    /// <param name="height">[px] of the highest.</param>
    public static PressureScale Of(IEnumerable<double> pressures, double floor, double height)
    {
        var above = pressures.Where(p => double.IsFinite(p) && p > 0).Order().ToList();
        var greatest = above.Count > 0 ? above[^1] : 1;
        var top = greatest * 1.06;
        var quarter = above.Count > 0 ? above[above.Count / 4] : greatest;
        return new(floor, height, top, quarter < 0.45 * greatest);
    }

    public double Y(double pressure)
    {
        var share = double.IsFinite(pressure) ? Math.Clamp(pressure / _top, 0, 1) : 0;
        return _floor - (_height * (IsRoot ? Math.Sqrt(share) : share));
    }

    /// <summary>The figures of the axis with their heights, none nearer to another than a line of lettering; between them, marks without a figure.</summary>
    public IEnumerable<(double Y, string? Figure)> Marks()
    {
        var step = NiceStep(_top / 12);
        var last = double.PositiveInfinity;
        foreach (var value in Enumerable.Range(0, (int)(_top / step) + 1).Select(i => i * step).OrderDescending())
        {
            var y = Y(value);
            // From the top, where a square root lies closest; nought always has its figure.
            if (value == 0 || (last == double.PositiveInfinity || y - last >= 24) && _floor - y >= 24)
            {
                last = y;
                yield return (y, value.ToString("0.####", CultureInfo.InvariantCulture));
            }
            else
            {
                yield return (y, null);
            }
        }
    }

    private static double NiceStep(double least)
    {
        var decade = Math.Pow(10, Math.Floor(Math.Log10(Math.Max(least, 1e-9))));
        return decade * Steps.First(s => s * decade >= least * 0.999);
    }
}
