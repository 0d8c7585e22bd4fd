using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-1132a, 1,1-difluoroethene. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R1132a
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-1132a",
        Name = "1,1-difluoroethene",
        CasNumber = "75-38-7",
        Source = "Ryo Akasaka and Robert E. Low and Eric W. Lemmon, (2026), A Fundamental Equation of State for "
            + "1,1-Difluoroethene (R-1132a), International Journal of Thermophysics, vol. 47, 128, "
            + "doi:10.1007/s10765-026-03794-8",
        MolarMass = 0.0640340864,
        GasConstant = 8.314462618,
        ReducingTemperature = 302.62,
        ReducingMolarDensity = 6510,
        CriticalTemperature = 302.62,
        CriticalPressure = 4460494.408005374,
        CriticalMolarDensity = 6510,
        AcentricFactor = 0.17702441908795863,
        MinimumTemperature = 111,
        MaximumTemperature = 400,
        MaximumPressure = 30000000,
        IdealGas = new IdealHelmholtz(
            logTau: 3,
            tauLogTau: 0,
            powers: new double[0, 2],
            planckEinstein: new double[,]
            {
                { 2.38, 2.1479082677945938 },
                { 9.45, 5.287158813032846 },
            }),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 0.0313181, 4, 1, 0 },
                { 0.7213967, 1, 0.143, 0 },
                { 0.1902012, 2, 0.336, 0 },
                { 0.0562612, 3, 0.13, 0 },
                { -0.46220008385, 1, 1, 0 },
                { -0.81782202222, 2, 1.06, 0 },
            },
            Exponential = new double[,]
            {
                { -0.7436092, 1, 1.29, 1.147, 1 },
                { -0.26903, 1, 0.95, 0.9776, 2 },
                { -0.0883704, 1, 5.738, 0.6937, 3 },
                { -0.0486345, 2, 3.74, 0.389, 3 },
                { -0.0173098, 3, 3.92, 0.373, 3 },
            },
            Gaussian = new double[,]
            {
                { -0.212, 1, 1.17, 0.53, 0, 1, 0.99 },
                { -0.01, 2, 1.2, 0.3, 0, 1, 0.6 },
                { -0.03, 1, 1.1, 0.552, 0, 1, 0.2 },
                { -0.3435674, 1, 1.45, 1.154, 2.27, 1.35, -0.3 },
            },
        },
        SaturationViscosity = new double[,]
        {
            { 201, 0.00017801, 8.5336E-06 },
            { 209.41, 0.00016134, 8.887E-06 },
            { 217.83, 0.00014654, 9.2426E-06 },
            { 226.24, 0.00013325, 9.6028E-06 },
            { 234.65, 0.00012114, 9.9732E-06 },
            { 243.06, 0.00010996, 1.0362E-05 },
            { 251.48, 9.9495E-05, 1.0781E-05 },
            { 259.89, 8.9587E-05, 1.1251E-05 },
            { 268.3, 8.0046E-05, 1.1806E-05 },
            { 276.72, 7.0649E-05, 1.2513E-05 },
            { 285.13, 6.1082E-05, 1.3518E-05 },
            { 293.54, 5.0537E-05, 1.5256E-05 },
        },
    };
}
