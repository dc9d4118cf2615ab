using Thoubook.Mechanics.Valves;

namespace Thoubook.Mechanics.Circuits;

/// <summary>A valve that a spring holds shut until the pressure before it lifts it: relief valve, by-pass, check valve.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="From">[-] place of the node before it.</param>
/// <param name="To">[-] place of the node that it lets oil go to.</param>
/// <param name="Seat">[m] diameter of the seat, or of the piston.</param>
/// <param name="Preload">[N] force of the spring when shut; 0 or more.</param>
/// <param name="Spring">[N/m] rate of the spring.</param>
/// <param name="Lift">[m] greatest lift.</param>
/// <param name="Discharge">[-] share of the ideal flow.</param>
/// <remarks>
/// Model: lift x from the forces, k x + F_flow = A (p_from − p_vent) − preload within 0 and the greatest lift; Q = sign(dp) Cd a(x) √(2|dp|/ρ), a not above A, and a leak
/// π d h³ dp/(12 μ w) both ways. Vented to where it delivers, p_from − p_vent is dp, and nothing comes back through it. Disc: a = π d x, no flow force. Poppet of half angle β: the frustum π x sin β (d − x sin β cos β),
/// F_flow = 2 Cd a |dp| cos β. Ball of radius R on the edge of a seat of radius s: π s (l − R)(1 + R/l), l² = s² + (√(R² − s²) + x)², no flow force. Piston: port × (x − overlap),
/// F_flow = 0.43 port (x − overlap) |dp|.
/// </remarks>
public sealed record ReliefValve(string Name, int From, int To, double Seat, double Preload, double Spring, double Lift, double Discharge) : CircuitElement(Name, From, To)
{
    private static readonly SizeRule[] All =
    [
        SizeRule.AboveZero(nameof(Seat)), SizeRule.ZeroOrMore(nameof(Preload)), SizeRule.AboveZero(nameof(Spring)), SizeRule.AboveZero(nameof(Lift)), SizeRule.AboveZero(nameof(Discharge)),
        SizeRule.ZeroOrMore(nameof(SeatGap)), SizeRule.AboveZero(nameof(SeatWidth)), SizeRule.Between(nameof(HalfAngle), 0, Math.PI / 2), SizeRule.ZeroOrMore(nameof(Ball)),
        SizeRule.ZeroOrMore(nameof(Port)), SizeRule.ZeroOrMore(nameof(Overlap)),
    ];

    /// <summary>What closes it.</summary>
    public ClosureKind Closure { get; init; }

    /// <summary>[m] equivalent gap by which the shut seat leaks, on one side; for a piston its clearance on one side.</summary>
    public double SeatGap { get; init; }

    /// <summary>[m] width of the seat along the leak; for a piston the length that seals.</summary>
    public double SeatWidth { get; init; } = 1e-3;

    /// <summary>[rad] half angle of the cone of a poppet.</summary>
    public double HalfAngle { get; init; } = Math.PI / 4;

    /// <summary>[m] diameter of the ball of a ball valve.</summary>
    public double Ball { get; init; }

    /// <summary>[m] width round the bore of the port of a piston valve.</summary>
    public double Port { get; init; }

    /// <summary>[m] lift at which the port of a piston valve begins to open.</summary>
    public double Overlap { get; init; }

    /// <summary>[-] place of the node that its spring chamber is vented to; null: where it delivers.</summary>
    public int? Vent { get; init; }

    internal override ReadOnlySpan<SizeRule> Rules => All;

    internal override double[] Values => [Seat, Preload, Spring, Lift, Discharge, SeatGap, SeatWidth, HalfAngle, Ball, Port, Overlap];

    internal override int? Third => Vent == To ? null : Vent;

    internal override bool Conducts => SeatGap > 0;

    internal override bool GivesWay => Vent != From;

    internal override string? Contradiction =>
        Closure == ClosureKind.Ball && Ball <= Seat ? "the ball is no larger than its seat"
        : Closure == ClosureKind.Piston && Port <= 0 ? "the piston uncovers no port"
        : Closure == ClosureKind.Piston && Overlap >= Lift ? "the piston stops before the port opens"
        : null;
}

/// <summary>A valve that lets through as much as holds a lower pressure behind it: it shuts as that pressure rises.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="From">[-] place of the node before it.</param>
/// <param name="To">[-] place of the node behind it.</param>
/// <param name="Seat">[m] bore of the way when full open.</param>
/// <param name="Setting">[Pa] pressure behind it, above that of its spring chamber, at which it is just shut.</param>
/// <param name="Spring">[N/m] rate of the spring.</param>
/// <param name="Piston">[m] diameter on which the pressure behind it works.</param>
/// <param name="Lift">[m] greatest opening.</param>
/// <param name="Discharge">[-] share of the ideal flow.</param>
/// <remarks>Model: x = (setting − p_to + p_vent) A_piston/k within 0 and the greatest opening; a = π seat x, not above the bore; Q = sign(dp) Cd a √(2|dp|/ρ).</remarks>
public sealed record ReducingValve(string Name, int From, int To, double Seat, double Setting, double Spring, double Piston, double Lift, double Discharge) : CircuitElement(Name, From, To)
{
    private static readonly SizeRule[] All =
    [
        SizeRule.AboveZero(nameof(Seat)), SizeRule.ZeroOrMore(nameof(Setting)), SizeRule.AboveZero(nameof(Spring)), SizeRule.AboveZero(nameof(Piston)), SizeRule.AboveZero(nameof(Lift)),
        SizeRule.AboveZero(nameof(Discharge)),
    ];

    /// <summary>[-] place of the node that its spring chamber is vented to; null: the open air.</summary>
    public int? Vent { get; init; }

    internal override ReadOnlySpan<SizeRule> Rules => All;

    internal override double[] Values => [Seat, Setting, Spring, Piston, Lift, Discharge];

    internal override int? Third => Vent;

    internal override bool Conducts => false;

    internal override bool GivesWay => true;
}
