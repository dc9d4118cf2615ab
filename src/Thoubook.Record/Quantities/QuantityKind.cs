namespace Thoubook.Record.Quantities;

/// <summary>What sort of thing a quantity measures. The SI unit in which the record keeps each stands beside it.</summary>
public enum QuantityKind
{
    /// <summary>[m]</summary>
    Length,

    /// <summary>[K]</summary>
    Temperature,

    /// <summary>[K] a difference or a rise.</summary>
    TemperatureDifference,

    /// <summary>[Pa] gauge unless said otherwise.</summary>
    Pressure,

    /// <summary>[N·m]</summary>
    Torque,

    /// <summary>[N]</summary>
    Force,

    /// <summary>[N/m] a spring's rate.</summary>
    Stiffness,

    /// <summary>[kg]</summary>
    Mass,

    /// <summary>[rad]</summary>
    Angle,

    /// <summary>[m²]</summary>
    Area,

    /// <summary>[m³]</summary>
    Volume,

    /// <summary>[m³/s]</summary>
    Flow,

    /// <summary>[rad/s]</summary>
    RotationalSpeed,

    /// <summary>[s]</summary>
    Time,

    /// <summary>[m²/s]</summary>
    KinematicViscosity,

    /// <summary>[Pa·s]</summary>
    DynamicViscosity,

    /// <summary>[kg/m³]</summary>
    Density,

    /// <summary>[1/K] a coefficient of expansion.</summary>
    Expansion,

    /// <summary>[-] a count, a ratio, a share.</summary>
    Number,
}
