namespace Thoubook.Mechanics.Numerics;

/// <summary>A small fast generator of random numbers, the same on every machine. Streams of one seed are independent of each other.</summary>
/// <remarks>Model: a counter stepped by the golden ratio, each value mixed by two multiplications with xor-shifts between. Source: Steele, Lea and Flood, Fast splittable pseudorandom number generators, 2014 (from memory). Check: RandomStreamTests.</remarks>
public struct RandomStream
{
    private const ulong Golden = 0x9E3779B97F4A7C15;
    private ulong _state;

    /// <summary>A stream of a seed.</summary>
    /// <param name="seed">[-] the seed.</param>
    /// <param name="stream">[-] which of its streams.</param>
    public RandomStream(ulong seed, ulong stream) => _state = Mix(seed ^ Mix(stream + Golden));

    /// <summary>The next number, strictly between 0 and 1, each of 2⁵³ values equally likely.</summary>
    /// <returns>[-] the number.</returns>
    public double Next()
    {
        _state += Golden;
        return ((Mix(_state) >> 11) + 0.5) * (1.0 / (1UL << 53));
    }

    private static ulong Mix(ulong z)
    {
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }
}
