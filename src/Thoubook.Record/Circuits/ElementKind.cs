namespace Thoubook.Record.Circuits;

/// <summary>What sort of thing an element of the circuit is. Its keys and what it does: <see cref="ElementKinds"/>.</summary>
public enum ElementKind
{
    Pipe,

    [Word("laminar pipe")]
    LaminarPipe,
    Drilling,

    [Word("crank drilling")]
    CrankDrilling,
    Jet,
    Annulus,
    Slot,
    Jacket,

    [Word("grooved bearing")]
    GroovedBearing,

    [Word("half-grooved bearing")]
    HalfGroovedBearing,

    [Word("hole-fed bearing")]
    HoleFedBearing,
    Pump,

    [Word("gear pump")]
    GearPump,

    [Word("disc valve")]
    DiscValve,

    [Word("poppet valve")]
    PoppetValve,

    [Word("ball valve")]
    BallValve,

    [Word("piston valve")]
    PistonValve,

    [Word("reducing valve")]
    ReducingValve,

    [Word("check valve")]
    CheckValve,
    Strainer,
    Filter,
    Cooler,
    Consumer,
}
