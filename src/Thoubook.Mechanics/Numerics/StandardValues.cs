namespace Thoubook.Mechanics.Numerics;

/// <summary>Values fixed by agreement, each in one place.</summary>
public static class StandardValues
{
    /// <summary>[m/s²] standard gravity. Source: CGPM 1901 (published).</summary>
    public const double Gravity = 9.80665;

    /// <summary>[Pa] the standard atmosphere. Source: CGPM 1954 (published).</summary>
    public const double Atmosphere = 101_325;
}
