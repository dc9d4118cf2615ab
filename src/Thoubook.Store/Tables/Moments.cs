using NodaTime;

namespace Thoubook.Store.Tables;

/// <summary>A moment as two columns: nanoseconds of universal time since 1970, which sort, and the offset of the place in seconds.</summary>
internal static class Moments
{
    public static readonly Instant Earliest = Instant.FromUtc(1678, 1, 1, 0, 0);
    public static readonly Instant Latest = Instant.FromUtc(2262, 1, 1, 0, 0);

    public static bool CanHold(OffsetDateTime at) => at.ToInstant() is var instant && instant >= Earliest && instant < Latest;

    public static long Nanoseconds(OffsetDateTime at) => (at.ToInstant() - NodaConstants.UnixEpoch).ToInt64Nanoseconds();

    public static int OffsetSeconds(OffsetDateTime at) => at.Offset.Seconds;

    public static OffsetDateTime Read(long nanoseconds, int offsetSeconds) =>
        (NodaConstants.UnixEpoch + Duration.FromNanoseconds(nanoseconds)).WithOffset(Offset.FromSeconds(offsetSeconds));
}
