namespace Thoubook.Workshop.Starters;

/// <summary>
/// About how much oil the bearings and jets of an engine let go at a usual pressure when it is hot, so that a pump that nobody has measured is
/// drawn of a likely size.
/// </summary>
internal sealed class OilDemand
{
    /// <summary>[Pa] 40 psi.</summary>
    private const double Pressure = 275_790;

    /// <summary>[Pa·s] of hot oil.</summary>
    private const double Viscosity = 0.02;

    private double _flow;

    /// <param name="journal">[m] diameter.</param>
    /// <param name="clearance">[m] on diameter.</param>
    public void AddGrooved(double journal, double clearance) => _flow += 2 * Math.PI * journal * Cube(clearance / 2) * 1.54 * Pressure / (12 * Viscosity * 0.3 * journal);

    /// <param name="clearance">[m] on diameter.</param>
    public void AddHoleFed(double clearance) => _flow += 0.25 * Cube(clearance / 2) * Pressure / Viscosity;

    /// <summary>A fifth of an imperial gallon a minute.</summary>
    public void AddConsumer() => _flow += 0.2 * 4.54609e-3 / 60;

    /// <param name="bore">[m]</param>
    /// <param name="pressure">[psi]</param>
    public void AddJet(double bore, double pressure) => _flow += 0.62 * Math.PI / 4 * bore * bore * Math.Sqrt(2 * pressure * 6894.76 / 870);

    /// <summary>[m³] What a pump moves in a turn that delivers twice as much at this speed, its slip among it.</summary>
    /// <param name="speed">[rad/s]</param>
    public double DisplacementAt(double speed) => 2 * _flow / (speed / (2 * Math.PI));

    /// <summary>
    /// Gears of ten teeth that move this much in a turn: about 7 × width × teeth / (diametral pitch)² cubic inches, the common rule; about two
    /// thirds as wide as they are across.
    /// </summary>
    public static DrawnGears GearsFor(double displacement)
    {
        const double Inch = 0.0254;
        double[] pitches = [6, 7, 8, 10, 12, 14];
        var cubicInches = displacement / (Inch * Inch * Inch);
        var pitch = pitches.MinBy(p => Math.Abs(Math.Log(7 * 8 / p * DrawnGears.Teeth / (p * p) / cubicInches)));
        var width = Math.Max(6, Math.Round(cubicInches * pitch * pitch / (7 * DrawnGears.Teeth) * 16)) / 16;
        return new DrawnGears((DrawnGears.Teeth + 2) / pitch * Inch, width * Inch, 7 * width * DrawnGears.Teeth / (pitch * pitch) * Inch * Inch * Inch);
    }

    private static double Cube(double x) => x * x * x;
}

/// <summary>The gears of a pump that is only assumed, and the bores that go with it.</summary>
/// <param name="Over">[m] over the tips.</param>
/// <param name="Width">[m]</param>
/// <param name="Displacement">[m³] in a turn.</param>
internal sealed record DrawnGears(double Over, double Width, double Displacement)
{
    public const int Teeth = 10;

    /// <summary>[m] in which the oil runs at four tenths of a metre a second at 1500 revolutions a minute, so that it still comes when it is cold.</summary>
    public double SuctionBore => Math.Max(0.25 * 0.0254, Math.Sqrt(10 / Math.PI * FlowAt(1500)));

    /// <summary>[m] through which all of it runs at four metres a second at 2000 revolutions a minute.</summary>
    public double SeatBore => Math.Max(3 / 16.0, Math.Round(Math.Sqrt(FlowAt(2000) / Math.PI) / 0.0254 * 16) / 16) * 0.0254;

    /// <summary>[m³/s]</summary>
    /// <param name="revolutionsPerMinute">Of the pump.</param>
    public double FlowAt(double revolutionsPerMinute) => Displacement * revolutionsPerMinute / 60;
}
