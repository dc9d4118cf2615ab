namespace Thoubook.Mechanics.Circuits;

/// <summary>A place in an oil circuit that has one pressure.</summary>
/// <param name="Name">What it is called; no two nodes of a circuit share a name.</param>
/// <param name="FixedPressure">[Pa] gauge, where it is a reservoir whose pressure nothing in the circuit changes; null where the circuit settles it.</param>
/// <param name="Height">[m] above a level common to the circuit.</param>
public readonly record struct CircuitNode(string Name, double? FixedPressure = null, double Height = 0);
