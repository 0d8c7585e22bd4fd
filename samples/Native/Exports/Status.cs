namespace Refrigerant.Recovery.Samples.Native;

/// <summary>What a call returns; the header's <c>rr_status</c>.</summary>
internal enum Status
{
    Ok = 0,
    InvalidArgument = 1,
    InvalidHandle = 2,
    UnknownFluid = 3,
    OutOfRange = 4,
    NotConverged = 5,
    Internal = 99,
}
