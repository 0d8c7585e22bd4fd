using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-1234yf, 2,3,3,3-tetrafluoropropene. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R1234yf
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-1234yf",
        Name = "2,3,3,3-tetrafluoropropene",
        CasNumber = "754-12-1",
        Source = "Eric W. Lemmon and Ryo Akasaka, (2022), Equation of State for the Thermodynamic Properties of "
            + "2,3,3,3-Tetrafluoroprop-1-ene (R1234yf), Int. J. Thermophys., vol. 43, 119, "
            + "doi:10.1007/s10765-022-03015-y",
        MolarMass = 0.1140416,
        GasConstant = 8.314462618,
        ReducingTemperature = 367.85,
        ReducingMolarDensity = 4180,
        CriticalTemperature = 367.85,
        CriticalPressure = 3384400,
        CriticalMolarDensity = 4180,
        AcentricFactor = 0.276,
        MinimumTemperature = 121.6,
        MaximumTemperature = 410,
        MaximumPressure = 100000000,
        IdealGas = new IdealHelmholtz(
            logTau: 3,
            tauLogTau: 0,
            powers: new double[0, 2],
            planckEinstein: new double[,]
            {
                { 8.65, 1.3918716868288703 },
                { 9.75, 4.268044039690091 },
                { 2.11, 12.233247247519369 },
            }),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 0.0340387, 4, 1, 0 },
                { 1.912859, 1, 0.222, 0 },
                { -2.1984719881617, 1, 0.61, 0 },
                { -0.8147645305033, 2, 1.122, 0 },
                { 0.2288282, 3, 0.5, 0 },
                { -1.65436, 1, 2.14, 2 },
                { -1.446628, 3, 2.284, 2 },
                { 0.5961722, 2, 1.05, 1 },
                { -0.6148209, 2, 2.33, 2 },
                { -0.0180069, 7, 0.778, 1 },
            },
            Gaussian = new double[,]
            {
                { 0.2845275, 1, 1, 28.1, 1016, 1.061, 0.96 },
                { -0.3050809, 1, 2, 28, 1000, 1.062, 0.96 },
                { 2.198935, 1, 1.236, 1.307, 1.16, 1.3, 0.853 },
                { -0.4270329, 1, 1.6, 1.96, 1.2, 1.04, 1.15 },
                { -0.4015581, 1, 1.85, 1.25, 1.26, 1, 1.3 },
                { 0.1179587, 1, 0.7, 1, 1.6, 1.14, 1.5 },
                { -0.3141002, 1, 1.75, 2.2, 0.87, 1.1, 0.762 },
            },
        },
        SaturationViscosity = new double[,]
        {
            { 201, 0.00056231, 8.2588E-06 },
            { 215.16, 0.0004414, 8.859E-06 },
            { 229.33, 0.0003554, 9.4631E-06 },
            { 243.49, 0.00029113, 1.0071E-05 },
            { 257.66, 0.00024118, 1.0684E-05 },
            { 271.82, 0.0002013, 1.131E-05 },
            { 285.99, 0.00016869, 1.1958E-05 },
            { 300.15, 0.00014155, 1.2654E-05 },
            { 314.32, 0.00011851, 1.3443E-05 },
            { 328.48, 9.8543E-05, 1.4427E-05 },
            { 342.65, 8.0669E-05, 1.5861E-05 },
            { 356.81, 6.3575E-05, 1.8666E-05 },
        },
    };
}
