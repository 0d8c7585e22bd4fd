using System;

namespace Refrigerant.Recovery.Samples.Native;

/// <summary>A handle that was never made, or was freed.</summary>
internal sealed class InvalidHandleException(string kind, int handle) : Exception(FormattableString.Invariant($"There is no {kind} {handle}."));
