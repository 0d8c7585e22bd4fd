using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>The pure fluids whose constants the package carries. Nothing is created before a factory is called.</summary>
internal static class PureFluids
{
    public static IReadOnlyList<KeyValuePair<string, Func<PureFluidData>>> Factories { get; } =
    [
        new("R-11", R11.Create),
        new("R-12", R12.Create),
        new("R-13", R13.Create),
        new("R-13I1", R13I1.Create),
        new("R-14", R14.Create),
        new("R-21", R21.Create),
        new("R-22", R22.Create),
        new("R-23", R23.Create),
        new("R-32", R32.Create),
        new("R-40", R40.Create),
        new("R-41", R41.Create),
        new("R-113", R113.Create),
        new("R-114", R114.Create),
        new("R-115", R115.Create),
        new("R-116", R116.Create),
        new("R-123", R123.Create),
        new("R-124", R124.Create),
        new("R-125", R125.Create),
        new("R-134a", R134a.Create),
        new("R-141b", R141b.Create),
        new("R-142b", R142b.Create),
        new("R-143a", R143a.Create),
        new("R-152a", R152a.Create),
        new("R-161", R161.Create),
        new("R-170", R170.Create),
        new("R-218", R218.Create),
        new("R-227ea", R227ea.Create),
        new("R-236ea", R236ea.Create),
        new("R-236fa", R236fa.Create),
        new("R-245ca", R245ca.Create),
        new("R-245fa", R245fa.Create),
        new("R-290", R290.Create),
        new("R-C318", RC318.Create),
        new("R-365mfc", R365mfc.Create),
        new("R-600", R600.Create),
        new("R-600a", R600a.Create),
        new("R-601", R601.Create),
        new("R-601a", R601a.Create),
        new("R-717", R717.Create),
        new("R-744", R744.Create),
        new("R-1130(E)", R1130E.Create),
        new("R-1132(E)", R1132E.Create),
        new("R-1132a", R1132a.Create),
        new("R-1224yd(Z)", R1224ydZ.Create),
        new("R-1233zd(E)", R1233zdE.Create),
        new("R-1234yf", R1234yf.Create),
        new("R-1234ze(E)", R1234zeE.Create),
        new("R-1234ze(Z)", R1234zeZ.Create),
        new("R-1243zf", R1243zf.Create),
        new("R-1270", R1270.Create),
        new("R-1336mzz(E)", R1336mzzE.Create),
        new("R-1336mzz(Z)", R1336mzzZ.Create),
        new("R-E170", RE170.Create),
    ];
}
