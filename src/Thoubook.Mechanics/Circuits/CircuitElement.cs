namespace Thoubook.Mechanics.Circuits;

/// <summary>
/// What oil flows through between two nodes of a circuit. Flow is positive from <paramref name="From"/> to <paramref name="To"/>; dp is the pressure that drives it,
/// p_from − p_to + ρ g (z_from − z_to). Every number of an element is a parameter that a solver may change.
/// </summary>
/// <param name="Name">What it is called; no two elements of a circuit share a name.</param>
/// <param name="From">[-] place of a node in the circuit's list.</param>
/// <param name="To">[-] place of another node.</param>
public abstract record CircuitElement(string Name, int From, int To)
{
    /// <summary>Whether it is blanked off: nothing flows.</summary>
    public bool Blanked { get; init; }

    /// <summary>[any] Its numbers, in the order in which a circuit's parameters have them; NaN where an optional one is left out.</summary>
    public IReadOnlyList<double> Numbers => Values;

    /// <summary>The numbers it has, in the order of <see cref="Values"/>, with what each may be.</summary>
    internal abstract ReadOnlySpan<SizeRule> Rules { get; }

    /// <summary>Its numbers, in the order of <see cref="Rules"/>.</summary>
    internal abstract double[] Values { get; }

    /// <summary>What cannot be among sizes that are each allowed; null where nothing is wrong.</summary>
    internal virtual string? Contradiction => null;

    /// <summary>A third node that it looks at; null where it obeys its own pressure difference.</summary>
    internal virtual int? Third => null;

    /// <summary>Whether oil passes it both ways, the more the greater the pressure.</summary>
    internal virtual bool Conducts => true;

    /// <summary>Whether it opens to let oil out of its first node or into its second, as much as it must.</summary>
    internal virtual bool GivesWay => false;

    /// <summary>[m³] that it forces from its first node to its second for each turn of the engine.</summary>
    internal virtual double Forces => 0;
}

/// <summary>A rough pipe, or several alike side by side; a drilling, and one in a turning crank.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="From">[-] place of a node.</param>
/// <param name="To">[-] place of another node.</param>
/// <param name="Bore">[m] diameter.</param>
/// <param name="Length">[m] length.</param>
/// <param name="Roughness">[m] height of the roughness, below half the bore.</param>
/// <remarks>Model: dp = (f L/d + K) ρ v²/2, f after Churchill; a drilling between two radii of a shaft adds ρ ω² (r_to² − r_from²)/2 to dp.</remarks>
public sealed record Pipe(string Name, int From, int To, double Bore, double Length, double Roughness) : CircuitElement(Name, From, To)
{
    private static readonly SizeRule[] All =
    [
        SizeRule.AboveZero(nameof(Bore)), SizeRule.AboveZero(nameof(Length)), SizeRule.ZeroOrMore(nameof(Roughness)), SizeRule.ZeroOrMore(nameof(Losses)),
        SizeRule.AboveZero(nameof(Number)), SizeRule.ZeroOrMore(nameof(FromRadius)), SizeRule.ZeroOrMore(nameof(ToRadius)), SizeRule.Any(nameof(SpeedRatio)),
    ];

    /// <summary>[-] losses at ends and bends, in velocity heads.</summary>
    public double Losses { get; init; }

    /// <summary>[-] how many lie side by side.</summary>
    public double Number { get; init; } = 1;

    /// <summary>[m] distance of its first end from the axis that it turns about.</summary>
    public double FromRadius { get; init; }

    /// <summary>[m] distance of its far end from that axis.</summary>
    public double ToRadius { get; init; }

    /// <summary>[-] turns of that shaft for one of the engine.</summary>
    public double SpeedRatio { get; init; } = 1;

    internal override ReadOnlySpan<SizeRule> Rules => All;

    internal override double[] Values => [Bore, Length, Roughness, Losses, Number, FromRadius, ToRadius, SpeedRatio];

    internal override string? Contradiction => Roughness < Bore / 2 ? null : "the roughness fills the bore; the roughness is below half the bore";
}

/// <summary>A passage in which oil creeps: flow is proportional to pressure.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="From">[-] place of a node.</param>
/// <param name="To">[-] place of another node.</param>
/// <param name="Conductance">[m³] flow times viscosity over pressure; 0 or more.</param>
/// <remarks>Model: Q = G dp/μ.</remarks>
public sealed record LaminarPassage(string Name, int From, int To, double Conductance) : CircuitElement(Name, From, To)
{
    private static readonly SizeRule[] All = [SizeRule.ZeroOrMore(nameof(Conductance)), SizeRule.Any(nameof(FilmRise))];

    /// <summary>[K] how much warmer the oil in it is than the oil that comes to it.</summary>
    public double FilmRise { get; init; }

    internal override ReadOnlySpan<SizeRule> Rules => All;

    internal override double[] Values => [Conductance, FilmRise];

    internal override bool Conducts => Conductance > 0;
}

/// <summary>A passage with a creeping and a square part: a strainer, a jacket.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="From">[-] place of a node.</param>
/// <param name="To">[-] place of another node.</param>
/// <param name="Linear">[any] in 1/m³: pressure over viscosity and flow; 0 or more.</param>
/// <param name="Square">[any] in 1/m⁴: pressure over density and flow squared; 0 or more, not both 0.</param>
/// <remarks>Model: dp = B μ Q + S ρ Q|Q|.</remarks>
public sealed record QuadraticPassage(string Name, int From, int To, double Linear, double Square) : CircuitElement(Name, From, To)
{
    private static readonly SizeRule[] All = [SizeRule.ZeroOrMore(nameof(Linear)), SizeRule.ZeroOrMore(nameof(Square))];

    internal override ReadOnlySpan<SizeRule> Rules => All;

    internal override double[] Values => [Linear, Square];

    internal override string? Contradiction => Linear > 0 || Square > 0 ? null : "it resists nothing; one of its two parts is above 0";
}

/// <summary>A short hole with a sharp edge: a jet, a restrictor.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="From">[-] place of a node.</param>
/// <param name="To">[-] place of another node.</param>
/// <param name="Bore">[m] diameter.</param>
/// <param name="Discharge">[-] share of the ideal flow.</param>
/// <remarks>Model: Q = sign(dp) Cd A √(2|dp|/ρ).</remarks>
public sealed record Orifice(string Name, int From, int To, double Bore, double Discharge) : CircuitElement(Name, From, To)
{
    private static readonly SizeRule[] All = [SizeRule.AboveZero(nameof(Bore)), SizeRule.AboveZero(nameof(Discharge))];

    internal override ReadOnlySpan<SizeRule> Rules => All;

    internal override double[] Values => [Bore, Discharge];
}

/// <summary>A pump that moves a volume each turn, whatever the pressure, and leaks back. <c>From</c> is its suction side.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="From">[-] place of the node that it draws from.</param>
/// <param name="To">[-] place of the node that it delivers to.</param>
/// <param name="Displacement">[m³] for one turn.</param>
/// <param name="Leak">[m³] flow back times viscosity over pressure; 0 or more.</param>
/// <remarks>
/// Model: Q = (V + V_tip) n ratio φ + leak dp/μ; φ rises straight from 0 where the absolute pressure of <c>From</c> is at the inlet limit to 1 where it is at
/// <see cref="FillsAt"/>; 1 throughout where there is no limit.
/// </remarks>
public sealed record Pump(string Name, int From, int To, double Displacement, double Leak) : CircuitElement(Name, From, To)
{
    private static readonly SizeRule[] All =
    [
        SizeRule.ZeroOrMore(nameof(Displacement)), SizeRule.ZeroOrMore(nameof(Leak)), SizeRule.ZeroOrMore(nameof(SpeedRatio)), SizeRule.Any(nameof(TipDrag)),
        SizeRule.Optional(nameof(InletLimit)), SizeRule.Optional(nameof(FillsAt)),
    ];

    /// <summary>[-] turns of the pump for one of the engine.</summary>
    public double SpeedRatio { get; init; } = 1;

    /// <summary>[m³] carried by the tips besides the displacement, for one turn.</summary>
    public double TipDrag { get; init; }

    /// <summary>[Pa] absolute, of the inlet, at which nothing fills it; null: it fills whatever the suction.</summary>
    public double? InletLimit { get; init; }

    /// <summary>[Pa] absolute, of the inlet, from which it fills wholly; null: the air round the engine.</summary>
    public double? FillsAt { get; init; }

    internal override ReadOnlySpan<SizeRule> Rules => All;

    internal override double[] Values => [Displacement, Leak, SpeedRatio, TipDrag, InletLimit ?? double.NaN, FillsAt ?? double.NaN];

    internal override bool Conducts => Leak > 0;

    internal override double Forces => (Displacement + TipDrag) * SpeedRatio;

    internal override string? Contradiction =>
        Displacement + TipDrag < 0 ? "its tips carry back more than it moves"
        : FillsAt <= InletLimit ? "it fills wholly at no higher a pressure than that at which nothing fills it"
        : FillsAt is not null && InletLimit is null ? "it has a pressure at which it fills wholly and none at which nothing fills it"
        : null;
}

/// <summary>Something that takes a stated flow wherever there is pressure enough.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="From">[-] place of the node that feeds it.</param>
/// <param name="To">[-] place of the node that it lets the oil go to.</param>
/// <param name="Flow">[m³/s] what it takes; 0 or more.</param>
/// <param name="FullAt">[Pa] pressure difference from which it gets all of it; above 0.</param>
/// <remarks>Model: Q = flow × dp/full-at, within 0 and the flow.</remarks>
public sealed record Consumer(string Name, int From, int To, double Flow, double FullAt) : CircuitElement(Name, From, To)
{
    private static readonly SizeRule[] All = [SizeRule.ZeroOrMore(nameof(Flow)), SizeRule.AboveZero(nameof(FullAt))];

    internal override ReadOnlySpan<SizeRule> Rules => All;

    internal override double[] Values => [Flow, FullAt];

    internal override bool Conducts => false;
}
