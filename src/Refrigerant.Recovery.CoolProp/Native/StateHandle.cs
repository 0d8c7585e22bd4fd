using System.Runtime.InteropServices;

namespace Refrigerant.Recovery.CoolProp.Native;

/// <summary>The handle of one CoolProp state; it is freed when the last user of the fluid is gone.</summary>
internal sealed unsafe class StateHandle : SafeHandle
{
    private const int NoState = -1;

    private readonly NativeApi _api;

    public StateHandle(NativeApi api, nint handle)
        : base((nint)NoState, ownsHandle: true)
    {
        _api = api;
        SetHandle(handle);
    }

    public override bool IsInvalid => (nint)handle == NoState;

    protected override bool ReleaseHandle()
    {
        const int Length = 256;
        byte* message = stackalloc byte[Length];
        int error;
        lock (NativeApi.Gate)
        {
            _api.Free(handle, &error, message, Length);
        }

        return error == 0;
    }
}
