using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-161, fluoroethane. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R161
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-161",
        Name = "fluoroethane",
        CasNumber = "353-36-6",
        Source = "Jiangtao Wu and Yong Zhou, (2012), An Equation of State for Fluoroethane (R161), Int. J. Thermophys., "
            + "vol. 33, 220-234, doi:10.1007/s10765-011-1151-3",
        MolarMass = 0.0480595,
        GasConstant = 8.314472,
        ReducingTemperature = 375.25,
        ReducingMolarDensity = 6280,
        CriticalTemperature = 375.25,
        CriticalPressure = 5010000,
        CriticalMolarDensity = 6280,
        AcentricFactor = 0.2162428410661867,
        MinimumTemperature = 130,
        MaximumTemperature = 450,
        MaximumPressure = 5000000,
        IdealGas = new IdealHelmholtz(
            logTau: 3,
            tauLogTau: 0,
            powers: new double[0, 2],
            planckEinstein: new double[,]
            {
                { 2.059, 1.11925383077948 },
                { 9.253, 4.125249833444371 },
                { 6.088, 10.34510326449034 },
            }),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 1.511, 1, 0.37, 0 },
                { -2.3, 1, 0.97, 0 },
                { -0.457, 2, 1.14, 0 },
                { 0.1683, 3, 0.744, 0 },
                { 0.04133, 4, 1, 0 },
                { 0.62187, 2, 1.26, 1 },
                { -0.0265, 7, 1, 1 },
                { -1.03, 1, 1.8, 2 },
                { -0.285, 2, 3, 2 },
                { -0.476, 3, 2.25, 2 },
            },
            Gaussian = new double[,]
            {
                { 0.82, 1, 1, 0.96, 2.7, 0.9, 0.683 },
                { -0.3532, 1, 1.2, 1.35, 5.2, 0.69, 0.892 },
                { -0.116, 3, 5.3, 1.26, 3.9, 0.67, 0.785 },
                { -0.0220583, 3, 1, 1.23, 4.7, 0.67, 1.33 },
                { -1.63148, 3, 4, 16.8, 413, 1.15, 0.86 },
            },
        },
    };
}
